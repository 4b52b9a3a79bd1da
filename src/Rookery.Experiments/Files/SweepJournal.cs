using System.Collections.Immutable;
using System.Globalization;
using Rookery.Notation;
using Rookery.Traces.Measuring;

namespace Rookery.Experiments.Files;

/// <summary>Finished cells as lines of text, so that an interrupted sweep goes on where it stopped.</summary>
/// <remarks>
/// The first line names the sweep (<see cref="Sweep.Identity"/>), each further line is one cell with its exact values.
/// A last line that was cut off is left out, and its cell computed again.
/// </remarks>
public static class SweepJournal
{
    private const string Heading = "rookery-sweep ";

    /// <summary>The first line.</summary>
    public static string HeadingOf(Sweep sweep) => Heading + sweep.Identity();

    /// <summary>A cell's line, without a line break.</summary>
    public static string LineOf(CellResult cell) => string.Create(
        CultureInfo.InvariantCulture,
        $"{cell.Cell} {(cell.IsStarved ? 1 : 0)} {string.Join(' ', cell.Values.Select(TextOf))} .");

    /// <summary>Reads what was kept.</summary>
    /// <param name="sweep">The sweep that goes on.</param>
    /// <param name="lines">The journal's lines; none for a new one.</param>
    /// <returns>The cells that are done, each once.</returns>
    /// <exception cref="InputException">The journal is of another sweep.</exception>
    public static ImmutableArray<CellResult> Read(Sweep sweep, IEnumerable<string> lines)
    {
        string? heading = null;
        var cells = new SortedDictionary<int, CellResult>();
        foreach (string line in lines)
        {
            if (heading is null)
            {
                heading = line;
                if (heading != HeadingOf(sweep))
                    throw new InputException(ExperimentErrors.OtherJournal("program, data, choices or seeds differ"));
                continue;
            }

            if (CellOf(line) is { } cell && cell.Cell < sweep.CellCount)
                cells[cell.Cell] = cell;
        }

        return [.. cells.Values];
    }

    private static string TextOf(Ratio value) =>
        string.Create(CultureInfo.InvariantCulture, $"{value.Numerator}/{value.Denominator}");

    private static CellResult? CellOf(string line)
    {
        string[] parts = line.Split(' ');
        if (parts.Length != MeasureNames.All.Length + 3 || parts[^1] != "."
            || !int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out int cell))
            return null;
        var values = ImmutableArray.CreateBuilder<Ratio>();
        foreach (string part in parts[2..^1])
        {
            string[] fraction = part.Split('/');
            if (fraction.Length != 2 || !TryWhole(fraction[0], out Int128 upper)
                || !TryWhole(fraction[1], out Int128 lower) || lower < 0)
                return null;
            values.Add(new(upper, lower));
        }

        return new(cell, parts[1] == "1", values.ToImmutable());
    }

    private static bool TryWhole(string text, out Int128 value) =>
        Int128.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out value);
}
