namespace Rookery.Drawing;

/// <summary>
/// The bars of one worker in order of time, with sums by lane at every so many. Mutable while it is filled.
/// </summary>
/// <remarks>21 bytes a bar, and 3 for the sums.</remarks>
internal sealed class WorkerBars
{
    private const int Block = 32;

    private readonly List<long> _from = [];
    private readonly List<long> _to = [];
    private readonly List<byte> _lane = [];
    private readonly List<int> _step = [];
    private readonly List<long> _sums = [];
    private readonly long[] _total = new long[Drawing.Lane.Count];

    public int Count => _from.Count;

    public void Add(Bar bar)
    {
        if (_from.Count % Block == 0)
            _sums.AddRange(_total);
        _from.Add(bar.From);
        _to.Add(bar.To);
        _lane.Add((byte)bar.Lane);
        _step.Add(bar.Step);
        _total[bar.Lane] = _total[bar.Lane] > long.MaxValue - bar.Ticks ? long.MaxValue : _total[bar.Lane] + bar.Ticks;
    }

    /// <summary>The bars that share more than a moment with a window, cut to it.</summary>
    public IEnumerable<Bar> Within(int worker, long from, long to)
    {
        for (int i = FirstEndingAfter(from); i < Count && _from[i] < to; i++)
            yield return new(worker, _lane[i], Math.Max(from, _from[i]), Math.Min(to, _to[i]), _step[i]);
    }

    /// <summary>How many bars share more than a moment with a window.</summary>
    public int CountWithin(long from, long to) =>
        to <= from ? 0 : Math.Max(0, FirstStartingAt(to) - FirstEndingAfter(from));

    /// <summary>Adds the time in each lane up to a time, less what was done up to a block, to some sums.</summary>
    /// <param name="time">Up to when.</param>
    /// <param name="baseBlock">From <see cref="BlockAt"/>: numbers stay small and exact however late it is.</param>
    /// <param name="into">One number a lane.</param>
    public void AddUpTo(double time, int baseBlock, Span<double> into)
    {
        if (Count == 0)
            return;
        int last = LastStartingBefore(time);
        int block = Math.Max(last, 0) / Block;
        for (int lane = 0; lane < into.Length; lane++)
        {
            into[lane] += _sums[(block * Drawing.Lane.Count) + lane] - _sums[(baseBlock * Drawing.Lane.Count) + lane];
        }

        for (int i = block * Block; i <= last; i++)
            into[_lane[i]] += Math.Min(time, _to[i]) - _from[i];
    }

    /// <summary>The block of the first bar that a window has to do with.</summary>
    public int BlockAt(long time) => Math.Max(0, LastStartingBefore(time)) / Block;

    private int LastStartingBefore(double time)
    {
        int low = 0;
        int high = Count;
        while (low < high)
        {
            int middle = (low + high) >>> 1;
            if (_from[middle] < time)
                low = middle + 1;
            else
                high = middle;
        }

        return low - 1;
    }

    private int FirstStartingAt(long time)
    {
        int index = _from.BinarySearch(time);
        return index < 0 ? ~index : index;
    }

    private int FirstEndingAfter(long time)
    {
        int index = _to.BinarySearch(time);
        return index < 0 ? ~index : index + 1;
    }
}
