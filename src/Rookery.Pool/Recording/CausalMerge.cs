namespace Rookery.Pool.Recording;

/// <summary>Brings the events of all workers into one order that could have been: no effect before its cause.</summary>
/// <remarks>
/// <para>
/// A worker notes the time shortly before or after what it notes takes effect, and may lose its processor in between,
/// so
/// times alone can put a steal before its fork. What must come first is known, though: a fork before the steal of its
/// child,
/// steals from one deque in the order of the forks, a wait before the end of what it waited for, that end before the
/// join
/// passes. Of all events whose causes are placed, the earliest comes next, and its time is at least that of the one
/// before.
/// </para>
/// <para>Mutable, used once. Linear in the events, times the number of workers.</para>
/// </remarks>
internal sealed class CausalMerge
{
    private readonly IReadOnlyList<WorkerStream> _streams;
    private readonly Dictionary<(int Worker, int Index), List<(int Worker, int Index)>> _causes = [];
    private readonly int[] _next;

    public CausalMerge(IReadOnlyList<WorkerStream> streams, bool thievesTakeOldest, bool isShared)
    {
        _streams = streams;
        _next = new int[streams.Count];
        FindCauses(thievesTakeOldest);
        AddTickets(isShared);
    }

    /// <summary>How far a time was moved at most so that effects follow causes, in the clock's units.</summary>
    public long ShiftMax { get; private set; }

    /// <summary>The order, up to the end of a task: each event's worker and index there.</summary>
    public List<(int Worker, int Index, long Time)> Order(int lastTask)
    {
        var order = new List<(int, int, long)>();
        long now = long.MinValue;
        while (true)
        {
            int best = -1;
            for (int worker = 0; worker < _streams.Count; worker++)
            {
                if (_next[worker] < _streams[worker].Events.Count && IsReady(worker)
                    && (best < 0 || TimeOf(worker) < TimeOf(best)))
                    best = worker;
            }

            if (best < 0)
                throw new RecordingException(
                    "The notes of the workers contradict each other; this is a fault of the pool.");
            RecordedEvent item = _streams[best].Events[_next[best]];
            ShiftMax = Math.Max(ShiftMax, now == long.MinValue ? 0 : now - item.Time);
            now = Math.Max(now, item.Time);
            order.Add((best, _next[best]++, now));
            if (item.Kind == RecordedKind.End && item.Task == lastTask)
                return order;
        }
    }

    private long TimeOf(int worker) => _streams[worker].Events[_next[worker]].Time;

    private bool IsReady(int worker)
    {
        if (!_causes.TryGetValue((worker, _next[worker]), out var causes))
            return true;
        foreach ((int other, int index) in causes)
        {
            if (_next[other] <= index)
                return false;
        }

        return true;
    }

    private void FindCauses(bool thievesTakeOldest)
    {
        var forks = new Dictionary<int, (int Worker, int Index)>();
        var ends = new Dictionary<int, (int Worker, int Index)>();
        var steals = new List<(int Task, (int Worker, int Index) Place)>();
        for (int worker = 0; worker < _streams.Count; worker++)
        {
            List<RecordedEvent> events = _streams[worker].Events;
            for (int i = 0; i < events.Count; i++)
            {
                if (events[i].Kind == RecordedKind.Fork)
                    forks[events[i].Other] = (worker, i);
                else if (events[i].Kind == RecordedKind.End)
                    ends[events[i].Task] = (worker, i);
                else if (events[i].Kind == RecordedKind.Probe)
                    steals.Add((events[i].Task, (worker, i)));
            }
        }

        AddTakes(forks);
        foreach ((int task, (int Worker, int Index) place) in steals)
            Add(place, forks[task]);
        if (thievesTakeOldest)
            AddStealOrder(steals, forks);
        for (int worker = 0; worker < _streams.Count; worker++)
        {
            foreach ((int index, int child) in _streams[worker].Waits)
            {
                if (ends.TryGetValue(child, out var end))
                    Add(end, (worker, index));
            }

            foreach ((int index, int child) in _streams[worker].Passes)
                Add((worker, index), ends[child]);
        }
    }

    private void AddTakes(Dictionary<int, (int Worker, int Index)> forks)
    {
        for (int worker = 0; worker < _streams.Count; worker++)
        {
            List<RecordedEvent> events = _streams[worker].Events;
            for (int i = 0; i < events.Count; i++)
            {
                if (events[i].Kind == RecordedKind.Take && forks.TryGetValue(events[i].Task, out var fork))
                    Add((worker, i), fork);
            }
        }
    }

    // Operations on a queue with a lock follow each other as they had the lock. A steal's look stands right before it.
    private void AddTickets(bool isShared)
    {
        var all = _streams.SelectMany((stream, worker) => stream.Tickets.Select(t => (Worker: worker, t.Index,
            t.Queue, t.Ticket)));
        foreach (var ofQueue in all.GroupBy(t => isShared ? 0 : t.Queue))
        {
            (int Worker, int Index)? before = null;
            foreach (var (worker, index, _, _) in ofQueue.OrderBy(t => t.Ticket))
            {
                bool isSteal = _streams[worker].Events[index].Kind == RecordedKind.Steal;
                if (before is { } earlier)
                    Add((worker, isSteal ? index - 1 : index), earlier);
                before = (worker, index);
            }
        }
    }

    // What lies in a deque leaves its top in the order in which it came in.
    private void AddStealOrder(
        List<(int Task, (int Worker, int Index) Place)> steals, Dictionary<int, (int Worker, int Index)> forks)
    {
        foreach (var ofVictim in steals.GroupBy(s => forks[s.Task].Worker))
        {
            (int Worker, int Index)? before = null;
            foreach (var (_, place) in ofVictim.OrderBy(s => forks[s.Task].Index))
            {
                // The steal itself stands right after its probe.
                if (before is { } earlier)
                    Add(place, (earlier.Worker, earlier.Index + 1));
                before = place;
            }
        }
    }

    private void Add((int Worker, int Index) effect, (int Worker, int Index) cause)
    {
        if (cause.Worker == effect.Worker)
            return;
        if (!_causes.TryGetValue(effect, out var causes))
            _causes[effect] = causes = [];
        causes.Add(cause);
    }
}
