namespace Rookery.Traces.Tests.Replaying;

/// <summary>Traces of any events at all, with times up to the ends of 64 bits: nothing may throw on them.</summary>
internal static class OddTraces
{
    public static Gen<Trace> All { get; } =
        from items in Items.Array[0, 80]
        from queues in SimulatedTraces.OneOf("per-worker", "shared", "none", "piles")
        from forkRuns in SimulatedTraces.OneOf("parent", "child")
        from atJoin in SimulatedTraces.OneOf("help", "leapfrog", "wait", "suspend", "pray")
        from victim in SimulatedTraces.OneOf("random", "round-robin", "lowest", "last-success", "fullest", "?")
        from whenIdle in SimulatedTraces.OneOf("spin", "back-off", "sleep")
        from workers in Gen.Int[-3, 6]
        select Build(items, workers, ("queues", queues), ("fork-runs", forkRuns), ("at-join", atJoin),
            ("victim", victim), ("when-idle", whenIdle));

    private static Gen<TraceEvent> Items =>
        from time in Gen.Long[-5, 50]
        from kind in Gen.Enum<EventKind>()
        from worker in Gen.Int[0, 4]
        from task in Gen.Int[-2, 9]
        from other in Gen.Int[-2, 9]
        from line in Gen.Int[-1, 3]
        select new TraceEvent(time * (long.MaxValue / 50), kind, worker, task, other, line);

    private static Trace Build(TraceEvent[] items, int workers, params (string Option, string Word)[] options)
    {
        var recorder = new TraceRecorder();
        foreach (TraceEvent item in items)
            recorder.Add(item);
        var inputs = new TraceInputs { Workers = workers };
        inputs = inputs with
        {
            Scheduler = inputs.Scheduler.AddRange(options.Select(o => KeyValuePair.Create(o.Option, o.Word))),
        };
        return recorder.Build(inputs, TextLabels.None);
    }
}
