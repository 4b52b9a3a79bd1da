using System.Collections.Immutable;
using System.Globalization;
using Rookery.Drawing;
using Rookery.Experiments;
using Rookery.Traces.Measuring;

namespace Rookery.Sweeps;

/// <summary>A sweep as a figure: the first factor's levels are columns, the second's are series.</summary>
internal static class SweepFigure
{
    /// <summary>Draws it.</summary>
    public static Scene Draw(
        Sweep sweep, ImmutableArray<TreatmentSummary> summaries, NamedMeasure measure, string unit, double confidence,
        Frame frame)
    {
        Factor columns = sweep.Factors[0];
        Factor? series = sweep.Factors.Length > 1 ? sweep.Factors[1] : null;
        if (series is not null && series.Levels.Length > ComparisonData.SeriesMax)
            (columns, series) = (series, columns);
        if (series is not null && series.Levels.Length > ComparisonData.SeriesMax)
            throw new Notation.InputException(AppErrors.TooManySeries(ComparisonData.SeriesMax));
        int columnAt = sweep.Factors.IndexOf(columns);
        int seriesAt = series is null ? -1 : sweep.Factors.IndexOf(series);
        string runs = sweep.SeedCount == 1 ? "one seed" : $"{NumberText.Whole(sweep.SeedCount)} seeds";
        return ComparisonView.Draw(
            new()
            {
                Title = $"{sweep.Subject.Program.Name}: {measure.Name} by "
                    + string.Join(" and ", sweep.Factors.Select(f => f.ShortName)),
                Subtitle = string.Create(
                    CultureInfo.InvariantCulture,
                    $"{runs} each, every run a point; bars: mean and its {confidence * 100:0.#} % interval"),
                Measure = measure.IsTime ? $"{measure.Name} ({unit})" : measure.Name,
                ColumnsAre = columns.ShortName,
                Columns = columns.Levels,
                Series = series is null ? [""] : [.. series.Levels.Select(level => $"{series.ShortName} {level}")],
                Groups =
                [
                    .. summaries.Where(s => s.Values is not null).Select(s => new ComparisonGroup(
                        columns.Levels.IndexOf(s.Treatment.Levels[columnAt]),
                        series is null ? 0 : series.Levels.IndexOf(s.Treatment.Levels[seriesAt]),
                        s.Values!.Values, s.Values.Mean, s.Interval!.Value.Low, s.Interval.Value.High)),
                ],
                Finding = MissingOf(summaries, measure),
                ArePaired = series is null && columns.Levels.Length == 2 && summaries.All(s => s.Missing == 0),
            },
            new() { Frame = frame });
    }

    private static string MissingOf(ImmutableArray<TreatmentSummary> summaries, NamedMeasure measure)
    {
        int missing = summaries.Sum(s => s.Missing);
        int none = summaries.Count(s => s.Values is null);
        return missing == 0
            ? ""
            : $"{NumberText.Whole(missing)} runs have no {measure.Name}, since they starved or had nothing to count, "
                + $"and are not drawn; {NumberText.Whole(none)} combinations have no run that has one.";
    }
}
