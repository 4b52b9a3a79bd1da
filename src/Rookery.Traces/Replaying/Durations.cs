namespace Rookery.Traces.Replaying;

/// <summary>Arithmetic on lengths of time that never overflows and never goes below 0.</summary>
/// <remarks>
/// Traces come from strangers: times may run backwards or be near the end of 64 bits. The audit says so; a replay only
/// has to stay calm. In a lawful trace none of the limits is ever reached.
/// </remarks>
internal static class Durations
{
    /// <summary>From one time to another: 0 when time runs backwards, at most the largest number.</summary>
    public static long Between(long from, long to)
    {
        if (to <= from)
            return 0;
        long length = unchecked(to - from);
        return length < 0 ? long.MaxValue : length;
    }

    /// <summary>The sum of two lengths, both at least 0; at most the largest number.</summary>
    public static long Sum(long first, long second)
    {
        long sum = unchecked(first + second);
        return sum < 0 ? long.MaxValue : sum;
    }
}
