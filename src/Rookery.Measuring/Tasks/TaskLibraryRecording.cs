using Rookery.Measuring.Plans;
using Rookery.Pool;
using Rookery.Pool.Recording;
using Rookery.Programs;
using Rookery.Traces;

namespace Rookery.Measuring.Tasks;

/// <summary>A run of the runtime's own task library as a trace.</summary>
/// <remarks>
/// Its event source says when a task is queued, begins, ends and is waited for. A task that begins on the thread that
/// queued
/// it was taken from that thread's own queue, any other was stolen from it. The source does not tell scheduling from
/// work, so
/// a thread counts as working whenever it has a task that does not wait. How the library's queues work inside is its
/// own
/// affair: its threads have a queue each, of which they take the newest and others the oldest (common knowledge of
/// .NET).
/// </remarks>
internal static class TaskLibraryRecording
{
    /// <summary>Runs a plan once and tells what the library did.</summary>
    /// <exception cref="RecordingException">The events do not fit together.</exception>
    public static Trace Of(BoundProgram program, PlanRun run)
    {
        int[] ids = new int[run.Plan.Count];
        int root;
        using var listener = new TaskListener();
        {
            // The caller's own thread is no worker: waiting there might run the program on it.
            Task first = new LibraryTask(run, 0, ids) { Listener = listener }.Start(0);
            root = first.Id;
            while (!first.IsCompleted)
                Thread.Sleep(1);
            first.GetAwaiter().GetResult();
        }

        // The event of the end comes just after the end.
        Thread.Sleep(20);
        var numbers = new Dictionary<int, int>();
        for (int task = 0; task < ids.Length; task++)
            numbers[ids[task]] = task;
        List<List<TaskEvent>> threads =
        [
            .. listener.Threads.Values.Select(events => events.Where(e => numbers.ContainsKey(e.Id)).ToList())
                .Where(events => events.Exists(e => e.Kind == TaskEventKind.Started))
                .OrderBy(events => events.First(e => e.Kind == TaskEventKind.Started).Time),
        ];
        var options = new PoolOptions { Workers = threads.Count, WhenIdle = WhenIdle.Sleep };
        Note[][] notes = [.. threads.Select((events, thread) => NotesOf(events, thread, threads, numbers, root))];
        Recorded recorded = Recorded.From(
            options, early: 0, notes, new RecordedTasks(false, run.Plan.Count), task => run.Plan.Labels[task]);
        return RecordedTrace.Of(recorded, program, recorded.Labels, "the runtime's task library");
    }

    private static Note[] NotesOf(
        List<TaskEvent> events, int thread, List<List<TaskEvent>> threads, Dictionary<int, int> numbers, int root)
    {
        var queuedBy = new Dictionary<int, int>();
        for (int i = 0; i < threads.Count; i++)
        {
            foreach (TaskEvent item in threads[i].Where(e => e.Kind == TaskEventKind.Scheduled))
                queuedBy[item.Id] = i;
        }

        var notes = new List<Note>();
        int awaited = -1;
        foreach (TaskEvent item in events)
        {
            int task = numbers[item.Id];
            void Add(NoteKind kind, int it, int other) => notes.Add(new(item.Time, kind, it, other, 0));
            switch (item.Kind)
            {
                case TaskEventKind.Scheduled:
                    Add(NoteKind.Fork, -1, task);
                    break;
                case TaskEventKind.WaitBegin:
                    awaited = task;
                    Add(NoteKind.Wait, -1, task);
                    break;
                case TaskEventKind.Started when item.Id == root:
                    Add(NoteKind.Root, task, -1);
                    break;
                case TaskEventKind.Started when queuedBy.GetValueOrDefault(item.Id, thread) == thread:
                    Add(awaited == task ? NoteKind.TakeAwaited : NoteKind.Take, task, task);
                    break;
                case TaskEventKind.Started:
                    Add(NoteKind.Steal, task, queuedBy[item.Id]);
                    Add(NoteKind.Begin, task, -1);
                    break;
                case TaskEventKind.Completed:
                    Add(NoteKind.End, task, -1);
                    break;
                case TaskEventKind.Joined:
                    Add(NoteKind.Pass, -1, -1);
                    break;
            }
        }

        return [.. notes];
    }
}
