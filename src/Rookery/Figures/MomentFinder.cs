using System.Globalization;
using Rookery.Notation;
using Rookery.Traces;

namespace Rookery.Figures;

/// <summary>Finds a moment of a run by its words: <c>first steal</c>, <c>worker 2 sleeps</c>, <c>step 42</c>.</summary>
/// <remarks>A moment is a number of events: the state after so many. The forms are in docs/command-line.md.</remarks>
internal static class MomentFinder
{
    /// <summary>The moment of those words.</summary>
    /// <exception cref="InputException">The words name none, or the run has none such.</exception>
    public static int Find(Trace trace, string text)
    {
        string[] words = text.ToLowerInvariant().Split(' ', StringSplitOptions.RemoveEmptyEntries);
        switch (words)
        {
            case ["start"]:
                return 0;
            case ["end"]:
                return trace.Count;
            case ["step", var number] when TryWhole(number, out long step):
                return Step(trace, step);
            case ["time", var number] when TryWhole(number, out long time):
                return Count(trace, time);
            case ["line", var number] when TryWhole(number, out long line):
                return First(trace, text, (in TraceEvent item) => item.Line == line);
            case ["worker", var number, .. var kind]
                when TryWhole(number, out long worker) && TryKind(kind, out var of):
                return First(trace, text, (in TraceEvent item) => item.Worker == worker && item.Kind == of);
            case ["last", .. var kind] when TryKind(kind, out var of):
                return Last(trace, text, of);
            case ["first", .. var kind] when TryKind(kind, out var of):
                return First(trace, text, (in TraceEvent item) => item.Kind == of);
            default:
                if (!TryKind(words, out var any))
                    throw new InputException(AppErrors.BadMoment(text));
                return First(trace, text, (in TraceEvent item) => item.Kind == any);
        }
    }

    /// <summary>The step of that number.</summary>
    /// <exception cref="InputException">The run is shorter.</exception>
    public static int Step(Trace trace, long step) => step >= 0 && step <= trace.Count
        ? (int)step
        : throw new InputException(AppErrors.NoSuchStep(step, trace.Count));

    /// <summary>A moment worth a figure when none is asked for: the first steal, else the middle of the run.</summary>
    public static int TellingStep(Trace trace)
    {
        for (int step = 0; step < trace.Count; step++)
        {
            if (trace[step].Kind == EventKind.Steal)
                return step + 1;
        }

        return (trace.Count / 2) + (trace.Count % 2);
    }

    private delegate bool EventTest(in TraceEvent item);

    private static int First(Trace trace, string text, EventTest isMeant)
    {
        for (int step = 0; step < trace.Count; step++)
        {
            if (isMeant(trace[step]))
                return step + 1;
        }

        throw new InputException(AppErrors.NoSuchMoment(text));
    }

    private static int Last(Trace trace, string text, EventKind kind)
    {
        for (int step = trace.Count - 1; step >= 0; step--)
        {
            if (trace[step].Kind == kind)
                return step + 1;
        }

        throw new InputException(AppErrors.NoSuchMoment(text));
    }

    private static int Count(Trace trace, long time)
    {
        int step = 0;
        while (step < trace.Count && trace[step].Time <= time)
            step++;
        return step;
    }

    private static bool TryWhole(string word, out long value) =>
        long.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out value);

    // "worker 2 sleeps", "last join pass": the trace's words, with or without the ending of a verb or a hyphen.
    private static bool TryKind(string[] words, out EventKind kind)
    {
        string asked = string.Concat(words).Replace("-", "", StringComparison.Ordinal);
        foreach (EventKind known in Enum.GetValues<EventKind>())
        {
            string word = known.ToString().ToLowerInvariant();
            if (asked == word || asked == word + "s" || asked == word + "es")
            {
                kind = known;
                return true;
            }
        }

        kind = default;
        return false;
    }
}
