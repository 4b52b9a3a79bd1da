using System.Collections.Immutable;
using System.Globalization;
using Rookery.Notation;
using Rookery.Traces.Files;

namespace Rookery.Traces.Replaying;

/// <summary>Finds moments of a run by name, for figures, lessons and jumps.</summary>
/// <remarks>
/// A name is <c>start</c>, <c>end</c>, <c>starved</c>, <c>most queued</c>, <c>step 42</c>, <c>time 500</c> (the first event at or
/// after it), or a description of events: any of <c>worker 2</c>, <c>task 7</c>, <c>line 9</c> and a kind of event, such as
/// <c>steal</c>, <c>lost-race</c>, or in the form of a sentence <c>worker 2 sleeps</c>. Before a description may stand <c>first</c>
/// or <c>last</c>, behind it a number: <c>steal 3</c> is the third. Case and blanks do not matter. Time is linear in the events.
/// </remarks>
public static class Moments
{
    private const int QuotedMax = 60;

    /// <summary>What may be asked for, for help texts.</summary>
    public static ImmutableArray<string> Understood { get; } =
    [
        "start", "end", "starved", "most queued", "step 42", "time 500", "first steal", "last steal", "steal 3",
        "first lost-race", "line 9", "task 7 begins", "worker 2 sleeps", "last worker 2 steals",
    ];

    /// <summary>The steps that a name stands for.</summary>
    /// <param name="trace">Where to look.</param>
    /// <param name="name">See the remarks of this type.</param>
    public static MomentSteps Find(Trace trace, string name)
    {
        string[] words = name.ToLowerInvariant()
            .Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        switch (words)
        {
            case ["start"]:
                return Found(trace, name, trace.Count > 0 ? 0 : -1);
            case ["end"]:
                return Found(trace, name, trace.Count - 1);
            case ["starved"]:
                return Found(trace, name, trace.Inputs.Starved ? trace.Count - 1 : -1);
            case ["most", "queued"]:
                return Found(trace, name, MostQueued(trace));
            case ["step", var number] when TryNumber(number, out long step):
                return Found(trace, name, step < trace.Count ? (int)step : -1);
            case ["time", var number] when TryNumber(number, out long time):
                return Found(trace, name, FirstAt(trace, time));
            default:
                return MomentQuery.TryRead(words) is { } query
                    ? Select(trace, name, query)
                    : new([], NotUnderstood(name));
        }
    }

    /// <summary>The first event of a kind at or after a step; -1 when there is none.</summary>
    /// <param name="trace">Where to look.</param>
    /// <param name="fromStep">Where to begin; below 0 counts as 0.</param>
    /// <param name="kind">Which events.</param>
    public static int Next(Trace trace, int fromStep, EventKind kind)
    {
        for (int step = Math.Max(0, fromStep); step < trace.Count; step++)
        {
            if (trace[step].Kind == kind)
                return step;
        }

        return -1;
    }

    /// <summary>The last event of a kind before a step; -1 when there is none.</summary>
    /// <param name="trace">Where to look.</param>
    /// <param name="beforeStep">Where to end; above the number of events counts as that.</param>
    /// <param name="kind">Which events.</param>
    public static int Previous(Trace trace, int beforeStep, EventKind kind)
    {
        for (int step = Math.Min(beforeStep, trace.Count) - 1; step >= 0; step--)
        {
            if (trace[step].Kind == kind)
                return step;
        }

        return -1;
    }

    /// <summary>Whether a word is a whole number that is not negative.</summary>
    internal static bool TryNumber(string word, out long number) =>
        long.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out number);

    private static MomentSteps Found(Trace trace, string name, int step) =>
        step >= 0 ? new([step], null) : new([], NoSuchMoment(trace, name));

    private static MomentSteps Select(Trace trace, string name, MomentQuery query)
    {
        var steps = ImmutableArray.CreateBuilder<int>();
        for (int step = 0; step < trace.Count; step++)
        {
            // Several steal events that are one steal are one moment.
            if (query.Matches(in trace[step]) && !StagePlayer.IsFurtherOfSteal(trace, step))
                steps.Add(step);
        }

        if (steps.Count == 0 || query.Place > steps.Count)
            return new([], NoSuchMoment(trace, name));
        return query.Place switch
        {
            MomentQuery.All => new(steps.ToImmutable(), null),
            MomentQuery.Last => new([steps[^1]], null),
            _ => new([steps[(int)query.Place - 1]], null),
        };
    }

    // The event after which most tasks are queued; the first of them when there are several.
    private static int MostQueued(Trace trace)
    {
        if (trace.Inputs.Option("queues", "per-worker") == "none")
            return -1;
        int best = -1;
        long most = 0;
        long queued = 0;
        for (int step = 0; step < trace.Count; step++)
        {
            EventKind kind = trace[step].Kind;
            if (kind == EventKind.Fork)
                queued++;
            else if (kind == EventKind.Take || (kind == EventKind.Steal && !StagePlayer.IsFurtherOfSteal(trace, step)))
                queued--;
            if (queued > most)
                (most, best) = (queued, step);
        }

        return best;
    }

    private static int FirstAt(Trace trace, long time)
    {
        for (int step = 0; step < trace.Count; step++)
        {
            if (trace[step].Time >= time)
                return step;
        }

        return -1;
    }

    private static Diagnostic NotUnderstood(string name) => new(
        "MO001", default, $"There is no moment called '{Quoted(name)}'.",
        $"Understood are {string.Join(", ", Understood)}; and with any of the kinds {string.Join(", ", EventWords.All)}.");

    private static Diagnostic NoSuchMoment(Trace trace, string name) => new(
        "MO002", default,
        string.Create(
            CultureInfo.InvariantCulture,
            $"The run has no moment '{Quoted(name)}'; it has {trace.Count} events, the last at time {trace.Makespan}."),
        "Ask for another moment, or change the run so that it happens.");

    private static string Quoted(string name)
    {
        string line = string.Concat(name.Select(c => char.IsControl(c) ? ' ' : c));
        return line.Length <= QuotedMax ? line : $"{line.AsSpan(0, QuotedMax)}…";
    }
}
