using Rookery.Notation.Randomness;
using Rookery.Traces;

namespace Rookery.Drawing.Tests;

/// <summary>
/// A small maker of lawful traces that shares nothing with the simulator: a halving program on workers that take
/// their newest task and steal the oldest of a random victim. Leaves cost 10 to 30, joining two halves 2.
/// </summary>
internal sealed class HalvingRun
{
    private readonly TraceRecorder _recorder = new();
    private readonly PriorityQueue<int, (long Time, int Worker)> _due = new();
    private readonly List<Frame> _tasks = [];
    private readonly Stack<int>[] _stacks;
    private readonly LinkedList<int>[] _deques;
    private readonly int[] _victims;
    private Xoshiro256StarStar _random;
    private readonly long _leafTicks;
    private long _overTime = -1;

    private HalvingRun(int workers, long seed, long leafTicks)
    {
        _stacks = [.. Enumerable.Range(0, workers).Select(_ => new Stack<int>())];
        _deques = [.. Enumerable.Range(0, workers).Select(_ => new LinkedList<int>())];
        _victims = [.. Enumerable.Repeat(-1, workers)];
        _random = Xoshiro256StarStar.FromSeed((ulong)seed);
        _leafTicks = leafTicks;
    }

    public static Trace Of(int workers, int leaves, long seed = 1, long leafTicks = 10)
    {
        var run = new HalvingRun(workers, seed, leafTicks);
        return run.Run(workers, leaves, seed);
    }

    private Trace Run(int workers, int leaves, long seed)
    {
        _tasks.Add(new Frame { Size = leaves, Parent = -1 });
        _stacks[0].Push(0);
        for (var worker = 0; worker < workers; worker++)
            _due.Enqueue(worker, (0, worker));
        while (_due.TryDequeue(out var worker, out var due))
            Step(worker, due.Time);
        var inputs = new TraceInputs
        {
            Program = "halves.fj",
            Maker = "test",
            Workers = workers,
            Cores = workers,
            Seed = seed,
        };
        var labels = TextLabels.None;
        return _recorder.Build(inputs, labels);
    }

    private void Step(int worker, long time)
    {
        if (_overTime >= 0)
        {
            Add(_overTime, EventKind.Stop, worker, -1, -1);
            return;
        }

        if (_victims[worker] >= 0)
            FinishProbe(worker, time);
        else if (_stacks[worker].TryPeek(out var task))
            Advance(worker, time, task, _tasks[task]);
        else
            Search(worker, time);
    }

    private void Advance(int worker, long time, int task, Frame frame)
    {
        switch (frame.Phase)
        {
            case 0:
                Add(time, EventKind.Begin, worker, task, frame.Parent);
                frame.Phase = frame.Size == 1 ? 4 : 1;
                Again(worker, time);
                break;
            case 1:
                var forked = Child(task, frame.Size / 2, true);
                frame.Pending++;
                Add(time, EventKind.Fork, worker, task, forked);
                _deques[worker].AddLast(forked);
                frame.Phase = 2;
                Again(worker, time);
                break;
            case 2:
                var called = Child(task, frame.Size - (frame.Size / 2), false);
                Add(time, EventKind.Call, worker, task, called);
                _stacks[worker].Push(called);
                frame.Phase = 3;
                Again(worker, time);
                break;
            case 3:
                Join(worker, time, task, frame);
                break;
            case 4:
                Add(time, EventKind.Work, worker, task, -1);
                frame.Phase = 5;
                Again(worker, time + (frame.Size == 1 ? _leafTicks * (1 + (long)_random.NextBelow(3)) : 2));
                break;
            default:
                End(worker, time, task, frame);
                break;
        }
    }

    private void Join(int worker, long time, int task, Frame frame)
    {
        if (frame.Pending == 0)
        {
            Add(time, EventKind.JoinPass, worker, task, -1);
            frame.Phase = 4;
            Again(worker, time);
            return;
        }

        if (!frame.IsWaiting)
            Add(time, EventKind.JoinWait, worker, task, frame.LastForked);
        frame.IsWaiting = true;
        Search(worker, time);
    }

    private void Search(int worker, long time)
    {
        if (_deques[worker].Last is { } newest)
        {
            _deques[worker].RemoveLast();
            Add(time, EventKind.Take, worker, newest.Value, -1);
            _stacks[worker].Push(newest.Value);
            Again(worker, time);
            return;
        }

        var victim = _stacks.Length == 1 ? 0 : (int)_random.NextBelow((ulong)(_stacks.Length - 1));
        victim += victim >= worker && _stacks.Length > 1 ? 1 : 0;
        Add(time, EventKind.Probe, worker, _deques[victim].First?.Value ?? -1, victim);
        _victims[worker] = victim;
        Again(worker, time + Math.Max(2, _leafTicks / 5));
    }

    private void FinishProbe(int worker, long time)
    {
        var victim = _victims[worker];
        _victims[worker] = -1;
        if (_deques[victim].First is { } oldest)
        {
            _deques[victim].RemoveFirst();
            Add(time, EventKind.Steal, worker, oldest.Value, victim);
            _stacks[worker].Push(oldest.Value);
        }
        else
        {
            Add(time, EventKind.Empty, worker, -1, victim);
        }

        Again(worker, time + 1);
    }

    private void End(int worker, long time, int task, Frame frame)
    {
        Add(time, EventKind.End, worker, task, frame.Parent);
        _stacks[worker].Pop();
        if (frame.IsForked)
            _tasks[frame.Parent].Pending--;
        if (task == 0)
            _overTime = time;
        Again(worker, time);
    }

    private int Child(int parent, int size, bool isForked)
    {
        _tasks.Add(new Frame { Size = size, Parent = parent, IsForked = isForked });
        if (isForked)
            _tasks[parent].LastForked = _tasks.Count - 1;
        return _tasks.Count - 1;
    }

    private void Again(int worker, long time) => _due.Enqueue(worker, (time, worker));

    private void Add(long time, EventKind kind, int worker, int task, int other) =>
        _recorder.Add(new TraceEvent(time, kind, worker, task, other, 1));

    private sealed class Frame
    {
        public required int Size { get; init; }

        public required int Parent { get; init; }

        public bool IsForked { get; init; }

        public bool IsWaiting { get; set; }

        public int Phase { get; set; }

        public int Pending { get; set; }

        public int LastForked { get; set; }
    }
}
