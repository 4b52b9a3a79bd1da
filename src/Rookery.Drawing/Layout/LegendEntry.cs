using System.Collections.Immutable;

namespace Rookery.Drawing;

/// <summary>One line of a legend: a sample and what it stands for.</summary>
/// <param name="Meaning">In words.</param>
/// <param name="Fills">Swatches of these fills side by side, labelled when they are workers.</param>
/// <param name="Sample">Draws a sample of one swatch's size instead, when there are no fills.</param>
internal sealed record LegendEntry(
    string Meaning, ImmutableArray<Ink> Fills, Func<Area, IEnumerable<Mark>>? Sample = null)
{
    public static LegendEntry Of(string meaning, Ink fill) => new(meaning, [fill]);

    public static LegendEntry Drawn(string meaning, Func<Area, IEnumerable<Mark>> sample) => new(meaning, [], sample);
}
