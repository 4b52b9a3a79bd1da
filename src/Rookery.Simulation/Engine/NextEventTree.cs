namespace Rookery.Simulation.Engine;

/// <summary>Who acts next: a tournament over the workers' times; ties go to the lowest worker.</summary>
/// <remarks>
/// Each worker has exactly one time at any moment, so a fixed tree of winners beats a heap of events: setting a time
/// replays one path, log2(workers) comparisons, and nothing is ever allocated or searched. Source: Knuth, The Art of
/// Computer Programming 3, section 5.4.1 ("Multiway merging and replacement selection"). Mutable, for one thread.
/// </remarks>
internal sealed class NextEventTree
{
    /// <summary>The time of a worker that waits to be told.</summary>
    public const long Never = long.MaxValue;

    private long[] _times;
    private int[] _winners;
    private int _leafCount;

    public NextEventTree(int workers)
    {
        _times = [];
        _winners = [];
        Grow(workers);
    }

    /// <summary>The worker with the earliest time.</summary>
    public int Winner => _winners[1];

    public long TimeOf(int worker) => _times[worker];

    /// <summary>Makes room for more workers; new ones have no time.</summary>
    public void Grow(int workers)
    {
        if (workers <= _leafCount)
            return;
        int leaves = Math.Max(2, _leafCount);
        while (leaves < workers)
            leaves *= 2;
        long[] times = new long[leaves];
        _times.AsSpan().CopyTo(times);
        times.AsSpan(_leafCount).Fill(Never);
        _times = times;
        _leafCount = leaves;
        _winners = new int[2 * leaves];
        for (int i = 0; i < leaves; i++)
            _winners[leaves + i] = i;
        for (int node = leaves - 1; node >= 1; node--)
            _winners[node] = Better(_winners[2 * node], _winners[(2 * node) + 1]);
    }

    /// <summary>Sets a worker's time.</summary>
    public void Set(int worker, long time)
    {
        long[] times = _times;
        int[] winners = _winners;
        times[worker] = time;
        for (int node = (_leafCount + worker) >> 1; node >= 1; node >>= 1)
        {
            int left = winners[2 * node];
            int right = winners[(2 * node) + 1];
            winners[node] = times[right] < times[left] ? right : left;
        }
    }

    // The left one wins a tie: it is the lower worker, since leaves stand in order.
    private int Better(int left, int right) => _times[right] < _times[left] ? right : left;
}
