namespace Rookery.Traces.Measuring;

/// <summary>The model of time that work stealing meets on average up to constants: <c>T1/P + Tinf</c>.</summary>
/// <remarks>
/// Source: Cormen, Leiserson, Rivest, Stein, Introduction to Algorithms, 3rd ed. 2009, section 27.1, with the story of
/// a chess program: 2048 units of work and a span of 1 against 1024 and 8. On 32 processors the second is faster (40
/// against 65), on 512 the first (5 against 10). The model leaves out the price of a steal and everything about memory.
/// </remarks>
public static class TimeModel
{
    /// <summary>The expected time of a program on some workers.</summary>
    /// <param name="work">T1, at least 0.</param>
    /// <param name="span">Tinf, 0 to T1.</param>
    /// <param name="workers">P, at least 1.</param>
    public static Ratio Expected(long work, long span, int workers)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(work);
        ArgumentOutOfRangeException.ThrowIfNegative(span);
        ArgumentOutOfRangeException.ThrowIfLessThan(workers, 1);
        return new(work + ((Int128)workers * span), workers);
    }

    /// <summary>
    /// The most workers on which a program with less work but a longer span is expected to be faster.
    /// </summary>
    /// <param name="lessWork">Work and span of the program with less work and more span.</param>
    /// <param name="lessSpan">Work and span of the other.</param>
    /// <returns>A number of workers; 0 when the other is faster or as fast on one already.</returns>
    /// <exception cref="ArgumentException">The first does not have less work and more span: one is always
    /// faster.</exception>
    public static long LastWorkersWhereFaster((long Work, long Span) lessWork, (long Work, long Span) lessSpan)
    {
        if (lessWork.Work >= lessSpan.Work || lessWork.Span <= lessSpan.Span)
            throw new ArgumentException(
                "The first program must have less work and more span than the second.", nameof(lessWork));

        // Faster where lessSpan.Work - lessWork.Work > P * (lessWork.Span - lessSpan.Span).
        return (lessSpan.Work - lessWork.Work - 1) / (lessWork.Span - lessSpan.Span);
    }
}
