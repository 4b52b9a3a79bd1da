using System.Collections.Immutable;
using Rookery.Pool;
using Rookery.Pool.Recording;
using Rookery.Programs;
using Rookery.Traces;

namespace Rookery.Measuring;

/// <summary>Recorded runs as traces.</summary>
internal static class RecordedTrace
{
    /// <summary>The trace of a recorded run.</summary>
    /// <param name="run">The recording.</param>
    /// <param name="program">The program.</param>
    /// <param name="labels">What its tasks are called.</param>
    /// <param name="maker">What ran it.</param>
    public static Trace Of(Recorded run, BoundProgram program, IReadOnlyList<string> labels, string maker)
    {
        var recorder = new TraceRecorder();
        foreach (RecordedEvent item in run.Events)
            recorder.Add(new TraceEvent(item.Time, KindOf(item.Kind), item.Worker, item.Task, item.Other, item.Line));
        return recorder.Build(
            new TraceInputs
            {
                Program = program.Name,
                Source = program.Source.Text,
                Maker = maker,
                Parameters = program.Parameters,
                Seed = program.Seed,
                Workers = run.Options.Workers,

                // What a worker's work stretches hold is its own time, whoever had the processor: docs/trace.md.
                Cores = run.Options.Workers,
                TimeUnit = "ns",
                ClockUncertainty = run.ClockUncertainty,
                HasAllLooks = false,
                Scheduler = OptionText.Of(run.Options).ToImmutableSortedDictionary(
                    option => option.Name, option => option.Word, StringComparer.Ordinal),
            },
            new TextLabels([.. labels]));
    }

    private static EventKind KindOf(RecordedKind kind) => kind switch
    {
        RecordedKind.Begin => EventKind.Begin,
        RecordedKind.End => EventKind.End,
        RecordedKind.Work => EventKind.Work,
        RecordedKind.Fork => EventKind.Fork,
        RecordedKind.Call => EventKind.Call,
        RecordedKind.Take => EventKind.Take,
        RecordedKind.Probe => EventKind.Probe,
        RecordedKind.Steal => EventKind.Steal,
        RecordedKind.Empty => EventKind.Empty,
        RecordedKind.LostRace => EventKind.LostRace,
        RecordedKind.JoinWait => EventKind.JoinWait,
        RecordedKind.JoinPass => EventKind.JoinPass,
        RecordedKind.Block => EventKind.Block,
        RecordedKind.Unblock => EventKind.Unblock,
        RecordedKind.Sleep => EventKind.Sleep,
        RecordedKind.Wake => EventKind.Wake,
        RecordedKind.Stop => EventKind.Stop,
    };
}
