using System.Collections.Immutable;

namespace Rookery.Measuring.Calibration;

/// <summary>What one operation costs on this computer.</summary>
/// <param name="Name">The machine's name for it (docs/machine.md).</param>
/// <param name="Median">The middle of the rounds, in nanoseconds.</param>
/// <param name="Low">A quarter of the rounds were below this.</param>
/// <param name="High">A quarter were above this.</param>
/// <param name="How">How it was measured, one sentence.</param>
public sealed record Cost(string Name, double Median, double Low, double High, string How)
{
    /// <summary>The cost from rounds of measuring.</summary>
    public static Cost Of(string name, string how, IEnumerable<double> rounds)
    {
        ImmutableArray<double> sorted = [.. rounds.Order()];
        return new(name, sorted[sorted.Length / 2], sorted[sorted.Length / 4], sorted[sorted.Length * 3 / 4], how);
    }
}
