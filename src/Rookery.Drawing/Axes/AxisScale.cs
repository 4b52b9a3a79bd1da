using System.Collections.Immutable;

namespace Rookery.Drawing;

/// <summary>Places values along an axis, evenly or by their logarithm.</summary>
/// <param name="From">Value at <paramref name="Start"/>; above 0 when logarithmic.</param>
/// <param name="To">Value at <paramref name="End"/>, above <paramref name="From"/>.</param>
/// <param name="Start">In pixels.</param>
/// <param name="End">In pixels; below <paramref name="Start"/> for an axis that rises.</param>
/// <param name="IsLogarithmic">Whether equal ratios are equal lengths.</param>
internal readonly record struct AxisScale(double From, double To, double Start, double End, bool IsLogarithmic)
{
    public double Place(double value)
    {
        var share = IsLogarithmic
            ? Math.Log(value / From) / Math.Log(To / From)
            : (value - From) / (To - From);
        return Start + (share * (End - Start));
    }

    public ImmutableArray<double> TicksAbout(int count, double stepMin = 0) => IsLogarithmic
        ? Ticks.Logarithmic(From, To)
        : Ticks.Within(From, To, count, stepMin);
}
