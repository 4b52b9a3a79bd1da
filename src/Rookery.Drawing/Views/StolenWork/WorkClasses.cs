using System.Collections.Immutable;

namespace Rookery.Drawing;

/// <summary>Classes of a histogram: edges, and how many values lie in each.</summary>
/// <param name="Edges">One more than classes; a class holds its lower edge, not its upper; the last holds both.</param>
/// <param name="IsLogarithmic">Whether each class is a fixed number of times as wide as the one before.</param>
/// <param name="HasZero">Whether a class for 0 stands before the others of a logarithmic histogram.</param>
internal sealed record WorkClasses(ImmutableArray<double> Edges, bool IsLogarithmic, bool HasZero)
{
    private const int ClassesMax = 24;

    public int Count => Edges.Length - 1 + (HasZero ? 1 : 0);

    public static WorkClasses For(IReadOnlyList<long> values, bool? isLogarithmic)
    {
        var largest = (double)values.Max();
        var positive = values.Where(value => value > 0).ToList();
        if (positive.Count == 0)
            return new([0, 1], false, false);
        var least = (double)positive.Min();
        if (!(isLogarithmic ?? largest > 20 * least))
            return Even(largest);
        // Doubling suits programs that halve; very long ranges double several times at once.
        var powers = (int)Math.Floor(Math.Log2(largest)) - (int)Math.Floor(Math.Log2(least)) + 1;
        var stride = (powers + ClassesMax - 1) / ClassesMax;
        var edges = ImmutableArray.CreateBuilder<double>();
        var edge = Math.Pow(2, Math.Floor(Math.Log2(least)));
        for (; edge <= largest; edge *= Math.Pow(2, stride))
            edges.Add(edge);
        edges.Add(edge);
        return new(edges.ToImmutable(), true, positive.Count < values.Count);
    }

    /// <summary>How many of the values lie in each class.</summary>
    public ImmutableArray<long> CountsOf(IReadOnlyList<long> values)
    {
        var counts = new long[Count];
        foreach (var value in values)
            counts[ClassOf(value)]++;
        return [.. counts];
    }

    /// <summary>
    /// Where a value stands along the axis, in classes from the left: 2.5 is the middle of the third.
    /// </summary>
    public double PlaceOf(double value)
    {
        var first = HasZero ? 1 : 0;
        if (HasZero && value < Edges[0])
            return 0.5;
        if (!IsLogarithmic)
            return (value - Edges[0]) / (Edges[1] - Edges[0]);
        return first + Math.Max(0, Math.Log(value / Edges[0]) / Math.Log(Edges[1] / Edges[0]));
    }

    private static WorkClasses Even(double largest)
    {
        var step = Math.Max(1, Ticks.StepFor(largest, 12));
        var edges = ImmutableArray.CreateBuilder<double>();
        for (var i = 0; i * step <= largest; i++)
            edges.Add(i * step);
        edges.Add(edges.Count * step);
        return new(edges.ToImmutable(), false, false);
    }

    private int ClassOf(long value)
    {
        if (HasZero && value == 0)
            return 0;
        var found = Edges.AsSpan().BinarySearch((double)value);
        var index = found >= 0 ? found : ~found - 1;
        return Math.Clamp(index, 0, Edges.Length - 2) + (HasZero ? 1 : 0);
    }
}
