using System.Collections.Immutable;
using Rookery.Traces.Files;

namespace Rookery.Traces.Replaying;

/// <summary>A description of events: what each must be, and which of those that fit are meant.</summary>
/// <param name="Worker">On which worker; null for any.</param>
/// <param name="Task">Of which task; null for any.</param>
/// <param name="Line">At which line; null for any.</param>
/// <param name="Kind">Of which kind; null for any.</param>
/// <param name="Place"><see cref="All"/>, <see cref="Last"/>, or which one, from 1.</param>
internal sealed record MomentQuery(long? Worker, long? Task, long? Line, EventKind? Kind, long Place)
{
    public const long All = 0;
    public const long Last = -1;

    /// <summary>The kinds as verbs of a sentence, in the order of <see cref="EventKind"/>.</summary>
    private static readonly ImmutableArray<string> Verbs =
    [
        "begins", "ends", "works", "forks", "calls", "takes", "probes", "steals", "loses", "misses", "waits", "passes",
        "blocks", "unblocks", "sleeps", "wakes", "stops",
    ];

    public bool Matches(in TraceEvent item) =>
        (Kind is null || item.Kind == Kind)
        && (Worker is null || item.Worker == Worker)
        && (Task is null || item.Task == Task)
        && (Line is null || item.Line == Line);

    /// <summary>Reads words such as <c>last worker 2 steals</c>; null when they say nothing.</summary>
    public static MomentQuery? TryRead(ReadOnlySpan<string> words)
    {
        var query = new MomentQuery(null, null, null, null, All);
        if (words is ["first" or "last", ..])
        {
            query = query with { Place = words[0] == "first" ? 1 : Last };
            words = words[1..];
        }

        bool saysSomething = false;
        while (!words.IsEmpty)
        {
            MomentQuery? next = query.With(words, out int used);
            if (next is null)
                return null;
            saysSomething |= next.Place == query.Place;
            query = next;
            words = words[used..];
        }

        return saysSomething ? query : null;
    }

    private MomentQuery? With(ReadOnlySpan<string> words, out int used)
    {
        used = 2;
        switch (words)
        {
            case ["worker", var number, ..] when Worker is null && Moments.TryNumber(number, out long worker):
                return this with { Worker = worker };
            case ["task", var number, ..] when Task is null && Moments.TryNumber(number, out long task):
                return this with { Task = task };
            case ["line", var number, ..] when Line is null && Moments.TryNumber(number, out long line):
                return this with { Line = line };
        }

        used = 1;
        if (words.Length == 1 && Place == All && Moments.TryNumber(words[0], out long place) && place > 0)
            return this with { Place = place };
        int verb = Verbs.IndexOf(words[0]);
        if (Kind is null && verb >= 0)
            return this with { Kind = (EventKind)verb };
        return Kind is null && EventWords.TryParse(words[0], out EventKind kind) ? this with { Kind = kind } : null;
    }
}
