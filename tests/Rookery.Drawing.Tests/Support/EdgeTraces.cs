using Rookery.Traces;

namespace Rookery.Drawing.Tests;

/// <summary>Traces at the edges of what a view may meet.</summary>
internal static class EdgeTraces
{
    /// <summary>Each edge by name.</summary>
    public static IEnumerable<(string Name, Trace Trace)> All()
    {
        yield return ("no events", Of());
        yield return ("one event", Of(Event(0, EventKind.Begin, 0, 0, -1)));
        yield return ("makespan 0", Of(
            Event(0, EventKind.Begin, 0, 0, -1),
            Event(0, EventKind.End, 0, 0, -1),
            Event(0, EventKind.Stop, 0, -1, -1)));
        yield return ("one worker", HalvingRun.Of(1, 5));
        yield return ("four workers", HalvingRun.Of(4, 24, 7));
        yield return ("eight workers", HalvingRun.Of(8, 3_000, 3));
        yield return ("forty workers", HalvingRun.Of(40, 500, 5));
        yield return ("huge times", HalvingRun.Of(3, 12, 2, 50_000_000_000_000_000));
        yield return ("numbers out of range", Of(
            Event(0, EventKind.Begin, 0, 0, -1), Event(3, EventKind.Steal, 0, -1, -1),
            Event(4, EventKind.Steal, 1, 900, 77), Event(5, EventKind.Fork, 0, -1, -1),
            Event(6, EventKind.Work, 2, -1, -1), Event(long.MaxValue, EventKind.Stop, 2, -1, -1)));
        yield return ("starved", Starved());
        yield return ("long names", LongNames());
        yield return ("asleep and blocked", AsleepAndBlocked());
    }

    public static Trace Named(string name) => All().Single(edge => edge.Name == name).Trace;

    private static Trace Starved() => Of(
        new TraceInputs { Program = "starve.fj", Workers = 2, Cores = 2, Starved = true },
        TextLabels.None,
        Event(0, EventKind.Begin, 0, 0, -1), Event(0, EventKind.Fork, 0, 0, 1), Event(0, EventKind.Fork, 0, 0, 2),
        Event(0, EventKind.JoinWait, 0, 0, 1), Event(0, EventKind.Sleep, 0, -1, -1),
        Event(1, EventKind.Take, 1, 1, -1), Event(1, EventKind.Begin, 1, 1, 0), Event(1, EventKind.Fork, 1, 1, 3),
        Event(1, EventKind.Work, 1, 1, -1), Event(9, EventKind.JoinWait, 1, 1, 3),
        Event(9, EventKind.Sleep, 1, -1, -1));

    private static Trace LongNames()
    {
        var run = HalvingRun.Of(4, 16, 9);
        var name = string.Concat(Enumerable.Repeat("a <very> \"long\" & winding name ", 40));
        return Copy(run, run.Inputs with { Program = name, TimeUnit = "ns" }, new LongLabels(name));
    }

    private static Trace AsleepAndBlocked() => Of(
        new TraceInputs { Program = "io.fj", Workers = 2, Cores = 2, TimeUnit = "ns" },
        TextLabels.None,
        Event(0, EventKind.Begin, 0, 0, -1), Event(0, EventKind.Work, 0, 0, -1), Event(0, EventKind.Sleep, 1, -1, -1),
        Event(40_000, EventKind.Fork, 0, 0, 1), Event(40_000, EventKind.Block, 0, 0, -1),
        Event(60_000, EventKind.Wake, 1, -1, 0), Event(61_000, EventKind.Probe, 1, 1, 0),
        Event(64_000, EventKind.Steal, 1, 1, 0), Event(65_000, EventKind.Begin, 1, 1, 0),
        Event(65_000, EventKind.Work, 1, 1, -1), Event(90_000, EventKind.Unblock, 0, 0, -1),
        Event(90_000, EventKind.JoinWait, 0, 0, 1), Event(95_000, EventKind.End, 1, 1, 0),
        Event(95_000, EventKind.JoinPass, 0, 0, -1), Event(95_000, EventKind.End, 0, 0, -1),
        Event(95_000, EventKind.Stop, 0, -1, -1), Event(95_000, EventKind.Stop, 1, -1, -1));

    private static Trace Of(params ReadOnlySpan<TraceEvent> events) => Of(new TraceInputs(), TextLabels.None, events);

    private static Trace Of(TraceInputs inputs, ITaskLabels labels, params ReadOnlySpan<TraceEvent> events)
    {
        var recorder = new TraceRecorder();
        foreach (ref readonly var item in events)
            recorder.Add(item);
        return recorder.Build(inputs, labels);
    }

    private static Trace Copy(Trace trace, TraceInputs inputs, ITaskLabels labels)
    {
        var recorder = new TraceRecorder();
        for (var step = 0; step < trace.Count; step++)
            recorder.Add(trace[step]);
        return recorder.Build(inputs, labels);
    }

    private static TraceEvent Event(long time, EventKind kind, int worker, int task, int other) =>
        new(time, kind, worker, task, other, 1);

    private sealed class LongLabels(string name) : ITaskLabels
    {
        public string LabelOf(int task) => name + task.ToString(System.Globalization.CultureInfo.InvariantCulture);
    }
}
