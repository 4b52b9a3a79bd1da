using System.Collections.Immutable;
using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Lab.Session;

/// <summary>Ways through a run other than step by step.</summary>
internal static class Jumps
{
    /// <summary>The kinds of event that one can jump to, with the key that does it.</summary>
    public static ImmutableArray<(EventKind Kind, string Key)> Kinds { get; } =
    [
        (EventKind.Steal, "s"), (EventKind.LostRace, "l"), (EventKind.Empty, "e"), (EventKind.Sleep, "z"),
        (EventKind.Wake, "w"), (EventKind.JoinWait, "j"), (EventKind.JoinPass, "p"), (EventKind.Fork, "k"),
        (EventKind.Take, "t"), (EventKind.End, "n"),
    ];

    /// <summary>Where something tells most: what a presenter goes through.</summary>
    public static bool IsTelling(EventKind kind) => kind is EventKind.Steal or EventKind.LostRace or EventKind.Sleep
        or EventKind.Wake or EventKind.JoinWait or EventKind.JoinPass or EventKind.Block;

    /// <summary>The step after the next event of a kind; null when none follows.</summary>
    public static int? Next(Trace trace, int step, EventKind kind) =>
        Moments.Next(trace, step, kind) is var found && found >= 0 ? found + 1 : null;

    /// <summary>The step after the event of a kind before the one last seen; null when there is none.</summary>
    public static int? Previous(Trace trace, int step, EventKind kind) =>
        Moments.Previous(trace, step - 1, kind) is var found && found >= 0 ? found + 1 : null;

    /// <summary>The step after the next telling event; the end when none follows.</summary>
    public static int NextTelling(Trace trace, int step)
    {
        for (int i = step; i < trace.Count; i++)
        {
            if (IsTelling(trace[i].Kind))
                return i + 1;
        }

        return trace.Count;
    }

    /// <summary>The step after the telling event before the one last seen; the start when there is none.</summary>
    public static int PreviousTelling(Trace trace, int step)
    {
        for (int i = step - 2; i >= 0; i--)
        {
            if (IsTelling(trace[i].Kind))
                return i + 1;
        }

        return 0;
    }

    /// <summary>Number of events up to and at a time.</summary>
    public static int StepAt(Trace trace, long time)
    {
        (int low, int high) = (0, trace.Count);
        while (low < high)
        {
            int middle = low + ((high - low) / 2);
            if (trace[middle].Time <= time)
                low = middle + 1;
            else
                high = middle;
        }

        return low;
    }
}
