using System.Collections.Immutable;
using System.Globalization;
using System.Numerics;
using Rookery.Lessons.Blocks;
using Rookery.Traces.Measuring;

namespace Rookery.Lessons.Exhibits;

/// <summary>The measures of a run by the names that formulas use: those of docs/json.md.</summary>
internal static class MeasureTable
{
    /// <summary>All names.</summary>
    public static ImmutableArray<string> Names { get; } =
        [.. MeasureNames.All.Select(one => one.Name), "finished", "starved"];

    /// <summary>The values of a run. What is not known of a starved run has no value.</summary>
    public static ImmutableArray<MeasureValue> Of(Measures run, bool isStarved) =>
    [
        .. MeasureNames.All.Select(one => Value(one.Name, one.ValueOf(run, isStarved))),
        Value("finished", Whole(isStarved ? 0 : 1)),
        Value("starved", Whole(isStarved ? 1 : 0)),
    ];

    /// <summary>The values as a table for a page.</summary>
    public static BlockTable TableOf(Measures run, bool isStarved, string unit) => new(
        "Measures of this run" + (unit == "units" ? "" : $" (times in {unit})"), ["measure", "value", "what it says"],
        [
            .. MeasureNames.All.Select(one => ImmutableArray.Create(
                one.Name, TextOf(one.ValueOf(run, isStarved)), one.Meaning)),
        ],
        [1]);

    /// <summary>A ratio as a table shows it.</summary>
    public static string TextOf(Ratio value)
    {
        if (!value.HasValue)
            return "\u2013";
        var exact = Formulas.Exact.Of((BigInteger)value.Numerator, (BigInteger)value.Denominator);
        return exact.ToText(exact.IsWhole ? 0 : 2);
    }

    private static MeasureValue Value(string name, Ratio value) => new(
        name, value.Numerator.ToString(CultureInfo.InvariantCulture),
        value.HasValue ? value.Denominator.ToString(CultureInfo.InvariantCulture) : "0");

    private static Ratio Whole(Int128 value) => new(value, 1);
}
