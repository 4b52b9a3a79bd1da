using System.Collections.Immutable;

namespace Rookery.Traces.Measuring;

/// <summary>Whether measured times can all come from one program under a greedy scheduler.</summary>
/// <remarks>
/// A deterministic program has some work <c>T1</c> and span <c>Tinf</c> with, for each measured <c>T(P)</c>: the work
/// law
/// <c>T1 ≤ P·T(P)</c>, the span law <c>Tinf ≤ T(P)</c>, and the greedy bound <c>P·T(P) ≤ T1 + (P−1)·Tinf</c>. The
/// first two give the largest T1 and Tinf that are possible; the third asks for large ones, so it need only be tried
/// there. Source: Cormen, Leiserson, Rivest, Stein, Introduction to Algorithms, 3rd ed. 2009, section 27.1 and
/// exercises 27.1-3 and 27.1-6 (from memory). Example: T(4) = 80, T(10) = 42, T(64) = 10 is impossible: T1 ≤ 320 and
/// Tinf ≤ 10, but the greedy bound at 10 workers asks for T1 + 9·Tinf ≥ 420, and 320 + 90 is 410.
/// </remarks>
public static class TimingConsistency
{
    /// <summary>Examines measured times.</summary>
    /// <param name="times">Workers (at least 1) and time (at least 0), in any order; at least one.</param>
    /// <exception cref="ArgumentException">There is no time, or one is out of range.</exception>
    public static TimingVerdict Consistent(IReadOnlyList<(int Workers, long Time)> times)
    {
        if (times.Count == 0)
            throw new ArgumentException("At least one time is needed.", nameof(times));
        foreach ((int workers, long time) in times)
        {
            if (workers < 1 || time < 0)
                throw new ArgumentException($"A time of {time} on {workers} workers is out of range.", nameof(times));
        }

        (int Workers, long Time) forWork = times.MinBy(t => (Int128)t.Workers * t.Time);
        (int Workers, long Time) forSpan = times.MinBy(t => t.Time);
        Int128 workMax = (Int128)forWork.Workers * forWork.Time;
        Int128 spanMax = Int128.Min(forSpan.Time, workMax);
        var broken = ImmutableArray.CreateBuilder<(int, long)>();
        foreach ((int workers, long time) in times)
        {
            if ((Int128)workers * time > workMax + ((workers - 1) * spanMax))
                broken.Add((workers, time));
        }

        return new(workMax, forWork.Workers, spanMax, forSpan.Workers, broken.ToImmutable());
    }
}
