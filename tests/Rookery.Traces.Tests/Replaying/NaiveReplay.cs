namespace Rookery.Traces.Tests.Replaying;

/// <summary>The state after some events, played from the start with plain lists: what the replay is compared
/// with.</summary>
/// <remarks>For lawful traces. It takes docs/trace.md word by word and shares nothing with the replay.</remarks>
internal sealed class NaiveReplay
{
    private readonly Dictionary<int, int> _parents = [];
    private readonly HashSet<int> _called = [];
    private readonly HashSet<int> _begun = [];
    private readonly Dictionary<int, List<int>> _putAside = [];
    private readonly Dictionary<int, long> _done = [];
    private readonly (EventKind Kind, int Task, long Time)[] _last;
    private readonly Trace _trace;

    public NaiveReplay(Trace trace, int workers, int steps)
    {
        _trace = trace;
        _last = Enumerable.Repeat((EventKind.Stop, -1, 0L), workers).ToArray();
        Stacks = Enumerable.Range(0, workers).Select(_ => new List<int>()).ToArray();
        Deques = Enumerable.Range(0, workers).Select(_ => new List<int>()).ToArray();
        for (int step = 0; step < steps; step++)
            Play(step);
        for (int worker = 0; worker < workers; worker++)
            Close(worker, Time);
    }

    public long Time { get; private set; }

    public List<int>[] Stacks { get; }

    public List<int>[] Deques { get; }

    public List<int> Shared { get; } = [];

    public (EventKind Kind, long Time) LastOf(int worker) => (_last[worker].Kind, _last[worker].Time);

    public long DoneBy(int task) => _done.GetValueOrDefault(task);

    /// <summary>Work done by each task and all its descendants: what a task did counts for all its ancestors.</summary>
    public long[] DoneUnderEach(int taskCount)
    {
        long[] sums = new long[taskCount];
        foreach ((int task, long done) in _done)
        {
            sums[task] += done;
            for (int t = task; _parents.TryGetValue(t, out int parent); t = parent)
                sums[parent] += done;
        }

        return sums;
    }

    public bool HasCreated(int task) => _parents.ContainsKey(task);

    private bool Is(string option, string word, string byDefault) => _trace.Inputs.Option(option, byDefault) == word;

    private void Play(int step)
    {
        TraceEvent item = _trace[step];
        int worker = item.Worker;
        Time = item.Time;
        Close(worker, item.Time);
        List<int> stack = Stacks[worker];
        switch (item.Kind)
        {
            case EventKind.Begin:
                _begun.Add(item.Task);
                if (!stack.Contains(item.Task))
                    stack.Add(item.Task);
                break;
            case EventKind.End:
                Assert.Equal(item.Task, stack[^1]);
                stack.RemoveAt(stack.Count - 1);
                break;
            case EventKind.Call:
                _parents.Add(item.Other, item.Task);
                _called.Add(item.Other);
                break;
            case EventKind.Fork:
                _parents.Add(item.Other, item.Task);
                Fork(item);
                break;
            case EventKind.Take:
                List<int> queue = Is("queues", "shared", "per-worker") ? Shared : Deques[worker];
                TakeFrom(queue, item.Task, isOldest: Is("owner-takes", "oldest", "newest"));
                BringBack(worker, item.Task);
                break;
            case EventKind.Steal:
                TakeFrom(Deques[item.Other], item.Task, isOldest: Is("thief-takes", "oldest", "oldest"));
                if (_trace[step - 1].Kind == EventKind.Steal && _trace[step - 1].Worker == worker)
                    Deques[worker].Add(item.Task);
                else
                    BringBack(worker, item.Task);
                break;
            case EventKind.JoinWait when Is("at-join", "suspend", "help"):
                PutAside(worker, item.Task);
                break;
            case EventKind.JoinPass when _putAside.ContainsKey(item.Task):
                BringBack(worker, item.Task);
                break;
        }

        _last[worker] = (item.Kind, item.Task, item.Time);
    }

    private void Fork(TraceEvent item)
    {
        if (Is("queues", "none", "per-worker"))
            return;
        bool childFirst = Is("fork-runs", "child", "parent");
        (Is("queues", "shared", "per-worker") ? Shared : Deques[item.Worker]).Add(childFirst ? item.Task : item.Other);
        if (!childFirst)
            return;
        PutAside(item.Worker, item.Task);
        Stacks[item.Worker].Add(item.Other);
    }

    private static void TakeFrom(List<int> queue, int task, bool isOldest)
    {
        int index = isOldest ? 0 : queue.Count - 1;
        Assert.Equal(task, queue[index]);
        queue.RemoveAt(index);
    }

    // The task leaves the worker, and its callers with it.
    private void PutAside(int worker, int task)
    {
        List<int> stack = Stacks[worker];
        Assert.Equal(task, stack[^1]);
        int first = stack.Count - 1;
        while (_called.Contains(stack[first]))
            first--;
        _putAside.Add(task, stack.GetRange(first, stack.Count - first));
        stack.RemoveRange(first, stack.Count - first);
    }

    private void BringBack(int worker, int task)
    {
        if (_putAside.Remove(task, out List<int>? chain))
            Stacks[worker].AddRange(chain);
        else
            Stacks[worker].Add(task);
    }

    private void Close(int worker, long time)
    {
        (EventKind kind, int task, long since) = _last[worker];
        if (kind == EventKind.Work)
            _done[task] = _done.GetValueOrDefault(task) + time - since;
    }
}
