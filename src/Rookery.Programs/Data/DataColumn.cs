namespace Rookery.Programs.Data;

/// <summary>A column of data with its running totals, so that any range is summed in two look-ups.</summary>
internal sealed class DataColumn
{
    private readonly long[] _values;
    private readonly long[] _totals;

    /// <summary>Takes the values.</summary>
    /// <exception cref="OverflowException">A running total leaves 64 bits.</exception>
    public DataColumn(long[] values)
    {
        _values = values;
        _totals = new long[values.Length + 1];
        for (int i = 0; i < values.Length; i++)
            _totals[i + 1] = checked(_totals[i] + values[i]);
    }

    /// <summary>Number of rows.</summary>
    public int Count => _values.Length;

    /// <summary>One row, from 0.</summary>
    public long this[long row] => _values[row];

    /// <summary>
    /// The total of the rows from <paramref name="from"/> up to, not including, <paramref name="to"/>.
    /// </summary>
    public bool TrySum(long from, long to, out long sum)
    {
        Int128 exact = (Int128)_totals[to] - _totals[from];
        sum = unchecked((long)exact);
        return sum == exact;
    }
}
