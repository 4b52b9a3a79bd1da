using System.Diagnostics;
using Rookery.Pool.Workers;

namespace Rookery.Pool.Recording;

/// <summary>A recorded run: its events in one order, ready to be written as a trace.</summary>
/// <remarks>
/// Immutable. Times are nanoseconds of the processor's steady clock from the beginning of the first task. The order
/// of events
/// is one that could have been: no effect stands before its cause, and a time was moved where that was needed, by
/// <see cref="ShiftMax"/> at most. A worker that looks for work again and again has its first <see
/// cref="LooksInRow"/> looks
/// recorded. The time that recording takes is part of what was recorded.
/// </remarks>
public sealed class Recorded
{
    /// <summary>Looks in a row that found nothing and are noted; those after them would tell nothing new.</summary>
    public const int LooksInRow = 4;

    internal Recorded(PoolOptions options)
    {
        Options = options;
    }

    /// <summary>What happened, in order.</summary>
    public IReadOnlyList<RecordedEvent> Events { get; private init; } = [];

    /// <summary>
    /// What each task is called, by its number; empty when the program numbers and names them itself.
    /// </summary>
    public IReadOnlyList<string> Labels { get; private init; } = [];

    /// <summary>The pool's options.</summary>
    public PoolOptions Options { get; }

    /// <summary>
    /// How far the clocks of two processors may differ, and how early a note may be, together in nanoseconds.
    /// </summary>
    public long ClockUncertainty { get; private init; }

    /// <summary>How far a time was moved at most so that effects follow their causes, in nanoseconds.</summary>
    public long ShiftMax { get; private init; }

    /// <summary>
    /// Looks that found nothing, and lost races, for which no moment was found at which that was so; they are left out.
    /// </summary>
    public int LooksLeftOut { get; private init; }

    /// <summary>From the beginning of the first task to its end, in nanoseconds.</summary>
    public long Makespan => Events.Count == 0 ? 0 : Events[^1].Time;

    /// <summary>Writes the trace as CSV (docs/trace.md).</summary>
    /// <param name="writer">Gets the text.</param>
    /// <param name="program">What the trace calls the program.</param>
    public void WriteCsv(TextWriter writer, string program) => RecordedCsv.Write(this, writer, program);

    /// <summary>Works out what the notes of a run mean.</summary>
    /// <param name="pool">The pool, idle.</param>
    /// <param name="epoch">Which run.</param>
    /// <param name="given">Number of tasks when the program numbered them itself; 0 otherwise.</param>
    internal static Recorded From(WorkerPool pool, int epoch, int given)
    {
        var recorders = pool.Workers.Select(worker => worker.Recorder!).ToArray();
        if (recorders.Any(recorder => recorder.IsFull))
        {
            throw new RecordingException(
                $"The run was longer than a worker's {pool.Options.RecordingCapacity} notes. Give the pool a larger "
                + "RecordingCapacity, or record a smaller run.");
        }

        int partsFrom = given > 0 ? given : (recorders.Max(r => r.Labels.Count) + 1) * recorders.Length;
        var notes = recorders.Select(recorder => recorder.NotesOf(epoch).ToArray()).ToArray();
        return From(
            pool.Options, Recorder.SharedLookNanoseconds, notes, new RecordedTasks(given > 0, partsFrom),
            task => TaskLabel.Read(recorders[task % recorders.Length].Labels.Of(task / recorders.Length)));
    }

    /// <summary>Works out what notes mean, whoever made them.</summary>
    /// <param name="options">How the tasks were scheduled.</param>
    /// <param name="early">How early a note may be, in nanoseconds.</param>
    /// <param name="notes">The notes of each worker, in its order.</param>
    /// <param name="tasks">An empty account of the tasks.</param>
    /// <param name="labels">What a task of the notes is called.</param>
    internal static Recorded From(
        PoolOptions options, long early, IReadOnlyList<Note[]> notes, RecordedTasks tasks, Func<int, string> labels)
    {
        var streams = new List<WorkerStream>();
        int root = -1;
        foreach (Note[] ofWorker in notes)
        {
            var stream = new WorkerStream();
            var expander = new StreamExpander(tasks, streams.Count, stream);
            foreach (Note note in ofWorker)
            {
                if (note.Kind == NoteKind.Root)
                    root = note.Task;
                expander.Add(note);
            }

            streams.Add(stream);
        }

        if (root < 0)
            throw new RecordingException("The run was not recorded from its beginning.");
        return Assemble(options, early, streams, tasks, labels, root);
    }

    private static Recorded Assemble(
        PoolOptions options, long early, List<WorkerStream> streams, RecordedTasks tasks, Func<int, string> labels,
        int root)
    {
        var merge = new CausalMerge(
            streams, options.Queues == Queues.PerWorker && options.ThiefTakes == ThiefTakes.Oldest,
            options.Queues == Queues.Shared);
        List<(int Worker, int Index, long Time)> order = merge.Order(root);
        var placer = new LookPlacer(streams, order, options.Queues == Queues.Shared);
        var looks = new Queue<PlacedLook>(placer.Place());
        long start = order.First(o => streams[o.Worker].Events[o.Index] is { Kind: RecordedKind.Begin } b
            && b.Task == root).Time;
        var numbers = new TaskNumbers(tasks, labels, root);
        var events = new List<RecordedEvent>(order.Count);
        long Since(long time) => (long)(Math.Max(0, time - start) * (1e9 / Stopwatch.Frequency));
        for (int i = 0; i < order.Count; i++)
        {
            (int worker, int index, long time) = order[i];
            events.Add(numbers.Renumbered(streams[worker].Events[index] with { Time = Since(time) }));
            while (looks.TryPeek(out PlacedLook look) && look.Place == i)
            {
                looks.Dequeue();
                events.Add(numbers.Renumbered(
                    new(Since(look.Time), look.Worker, look.Kind, look.Task, look.Victim, 0)));
            }
        }

        long end = events[^1].Time;
        foreach (int worker in events.Select(e => e.Worker).Distinct().Order().ToArray())
            events.Add(new(end, worker, RecordedKind.Stop, -1, -1, 0));
        return new(options)
        {
            Events = events,
            Labels = numbers.Labels,
            ClockUncertainty = ClockSkew.BoundNanoseconds + early,
            ShiftMax = (long)(merge.ShiftMax * (1e9 / Stopwatch.Frequency)),
            LooksLeftOut = placer.LeftOut,
        };
    }
}
