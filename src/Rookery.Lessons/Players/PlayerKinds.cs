using System.Collections.Immutable;
using Rookery.Traces;

namespace Rookery.Lessons.Players;

/// <summary>What the player calls the kinds of event, to jump from one to the next; empty for those nobody jumps to.
/// </summary>
internal static class PlayerKinds
{
    /// <summary>The words, in the order of <see cref="EventKind"/>.</summary>
    public static ImmutableArray<string> Words { get; } = [.. Enum.GetValues<EventKind>().Select(WordOf)];

    private static string WordOf(EventKind kind) => kind switch
    {
        EventKind.Begin => "begin",
        EventKind.End => "end",
        EventKind.Fork => "fork",
        EventKind.Take => "take",
        EventKind.Steal => "steal",
        EventKind.LostRace => "lost race",
        EventKind.JoinWait => "wait at a join",
        EventKind.JoinPass => "join passed",
        EventKind.Block => "block",
        EventKind.Unblock => "unblock",
        EventKind.Sleep => "sleep",
        EventKind.Wake => "wake",
        EventKind.Work or EventKind.Call or EventKind.Probe or EventKind.Empty or EventKind.Stop => "",
    };
}
