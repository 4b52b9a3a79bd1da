using System.Collections.Immutable;
using System.Globalization;
using Rookery.Traces.Measuring;

namespace Rookery.Experiments.Files;

/// <summary>What a file of results has: a row a run; its treatment, its seed, and all measures.</summary>
internal static class SweepColumns
{
    /// <summary>Names of the choices: the factors, or one column that names the treatment.</summary>
    public static ImmutableArray<string> ChoicesOf(Sweep sweep) =>
        sweep.Factors.IsEmpty ? ["treatment"] : [.. sweep.Factors.Select(f => f.ShortName)];

    /// <summary>How the run ended.</summary>
    public static string OutcomeOf(CellResult cell) => cell.IsStarved ? "starved" : "finished";

    /// <summary>The cells by treatment and then seed, as a reader wants them.</summary>
    public static IEnumerable<CellResult> InOrder(Sweep sweep, IEnumerable<CellResult> cells) =>
        cells.OrderBy(c => c.Cell % sweep.Treatments.Length).ThenBy(c => c.Cell);

    /// <summary>A value as text: whole numbers in full, others as the shortest that reads back the same.</summary>
    public static string TextOf(Ratio value)
    {
        if (!value.HasValue)
            return "";
        return value.Numerator % value.Denominator == 0
            ? (value.Numerator / value.Denominator).ToString(CultureInfo.InvariantCulture)
            : value.ToDouble().ToString("R", CultureInfo.InvariantCulture);
    }
}
