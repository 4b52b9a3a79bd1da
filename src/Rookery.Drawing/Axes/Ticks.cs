using System.Collections.Immutable;

namespace Rookery.Drawing;

/// <summary>Round values along an axis.</summary>
/// <remarks>
/// Steps of 1, 2 or 5 times a power of ten. Source: P. Heckbert, "Nice numbers for graph labels", Graphics Gems (1990),
/// pp. 61-63; there the range is widened, here the ticks stay within it.
/// </remarks>
public static class Ticks
{
    private const int CountMax = 100;

    /// <summary>The round step that cuts a range into about <paramref name="count"/> parts: 2 for 9 and 5.</summary>
    /// <param name="range">More than 0.</param>
    /// <param name="count">At least 1.</param>
    public static double StepFor(double range, int count)
    {
        var rough = range / Math.Max(1, count);
        var power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        var part = rough / power;
        return power * (part < 1.5 ? 1 : part < 3.5 ? 2 : part < 7.5 ? 5 : 10);
    }

    /// <summary>The round values within a range: 0, 2, 4, 6, 8 for 0 to 9 in about 5.</summary>
    /// <param name="from">Lower end.</param>
    /// <param name="to">Upper end; when not above <paramref name="from"/>, that alone is the answer.</param>
    /// <param name="count">About how many.</param>
    /// <param name="stepMin">The smallest step, such as 1 for counts.</param>
    public static ImmutableArray<double> Within(double from, double to, int count, double stepMin = 0)
    {
        if (!(to > from))
            return [from];
        var step = Math.Max(stepMin, StepFor(to - from, count));
        var first = Math.Ceiling((from / step) - 1e-9);
        var last = Math.Floor((to / step) + 1e-9);
        var ticks = ImmutableArray.CreateBuilder<double>();
        for (var i = 0; i <= Math.Min(last - first, CountMax); i++)
        {
            // Far from zero, neighbours may be the same number: each is kept once.
            var tick = (first + i) * step;
            if (ticks.Count == 0 || tick > ticks[^1])
                ticks.Add(tick);
        }

        return ticks.ToImmutable();
    }

    /// <summary>Powers of ten within a range of positive values, and with few of them 2 and 5 times these.</summary>
    public static ImmutableArray<double> Logarithmic(double from, double to)
    {
        var (first, last) = ((int)Math.Floor(Math.Log10(from)), (int)Math.Ceiling(Math.Log10(to)));
        var isFine = last - first <= 3;
        var stride = Math.Max(1, (last - first + 7) / 8);
        var ticks = ImmutableArray.CreateBuilder<double>();
        for (var power = first; power <= last; power += stride)
        {
            foreach (var factor in isFine ? [1.0, 2.0, 5.0] : new[] { 1.0 })
            {
                var value = factor * Math.Pow(10, power);
                if (value >= from * 0.999999 && value <= to * 1.000001)
                    ticks.Add(value);
            }
        }

        return ticks.ToImmutable();
    }
}
