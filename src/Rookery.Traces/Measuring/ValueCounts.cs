namespace Rookery.Traces.Measuring;

/// <summary>How often each value came: exact mean, median and largest, in memory of the distinct values.</summary>
internal sealed class ValueCounts
{
    private readonly SortedDictionary<long, long> _counts = [];

    public long Count { get; private set; }

    public Int128 Sum { get; private set; }

    public long Max { get; private set; }

    public void Add(long value)
    {
        _counts[value] = _counts.GetValueOrDefault(value) + 1;
        Count++;
        Sum += value;
        Max = Math.Max(Max, value);
    }

    /// <summary>The middle value, or half the sum of the two middle ones; no value when there is none.</summary>
    public Ratio Median()
    {
        if (Count == 0)
            return default;
        return new((Int128)At((Count - 1) / 2) + At(Count / 2), 2);
    }

    private long At(long rank)
    {
        foreach ((long value, long count) in _counts)
        {
            if (rank < count)
                return value;
            rank -= count;
        }

        return Max;
    }
}
