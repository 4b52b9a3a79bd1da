using System.Collections.Immutable;

namespace Rookery.Drawing;

/// <summary>The points of a speed-up figure, and the ranges of its axes.</summary>
internal sealed record SpeedUpPlan
{
    /// <summary>The most points drawn; of more, evenly ranked ones of each group are.</summary>
    public const int PointsMax = 1_200;

    public required ImmutableArray<(int Series, int Workers, double SpeedUp, string Target)> Points { get; init; }

    public required ImmutableArray<ImmutableArray<(int Workers, double SpeedUp)>> Medians { get; init; }

    public required int Dropped { get; init; }

    public required int WithoutTime { get; init; }

    public required bool IsLogarithmic { get; init; }

    public required int WorkersMax { get; init; }

    public required double SpeedUpMax { get; init; }

    public required double SpeedUpMin { get; init; }

    public static SpeedUpPlan Of(SpeedUpData data, SpeedUpOptions options)
    {
        var all = data.Series.SelectMany((series, index) => series.Runs.Select(run => (Series: index, Run: run)))
            .Where(point => point.Run.Makespan > 0 && data.WorkTicks > 0)
            .Select(point => (
                point.Series, point.Run.Workers, SpeedUp: (double)data.WorkTicks / point.Run.Makespan,
                Target: point.Run.Target ?? ""))
            .ToList();
        var groups = all.GroupBy(point => (point.Series, point.Workers)).OrderBy(group => group.Key).ToList();
        var perGroup = Math.Max(3, PointsMax / Math.Max(1, groups.Count));
        var points = groups.SelectMany(group => Thinned([.. group.OrderBy(point => point.SpeedUp)], perGroup));
        var medians = data.Series.Select((_, index) => groups.Where(group => group.Key.Series == index)
            .Select(group => (group.Key.Workers, MedianOf([.. group.Select(point => point.SpeedUp).Order()])))
            .ToImmutableArray());
        var kept = points.ToImmutableArray();
        var workersMax = all.Count == 0 ? 1 : all.Max(point => point.Workers);
        var least = all.Count == 0 ? 1 : all.Min(point => point.Workers);
        return new SpeedUpPlan
        {
            Points = kept,
            Medians = [.. medians],
            Dropped = all.Count - kept.Length,
            WithoutTime = data.Series.Sum(series => series.Runs.Length) - all.Count,
            IsLogarithmic = options.IsLogarithmic ?? workersMax / 32 > least,
            WorkersMax = workersMax,
            SpeedUpMax = TopOf(data, options, all, workersMax),
            SpeedUpMin = all.Count == 0 ? 1 : all.Min(point => point.SpeedUp),
        };
    }

    // The axis ends where linear speed-up does, or a little above the ceiling when that is much lower.
    private static double TopOf(
        SpeedUpData data, SpeedUpOptions options,
        List<(int Series, int Workers, double SpeedUp, string Target)> all, int workersMax)
    {
        var observed = all.Count == 0 ? 1 : all.Max(point => point.SpeedUp);
        var ceiling = data.SpanTicks > 0 ? (double)data.WorkTicks / data.SpanTicks : double.PositiveInfinity;
        var lawTop = options.ShowLaws ? Math.Min(workersMax, ceiling * 1.25) : 0;
        return Math.Max(1, Math.Max(observed, lawTop)) * 1.06;
    }

    private static IEnumerable<T> Thinned<T>(T[] ranked, int count)
    {
        if (ranked.Length <= count)
            return ranked;
        return Enumerable.Range(0, count).Select(i => ranked[(int)((long)i * (ranked.Length - 1) / (count - 1))]);
    }

    private static double MedianOf(double[] ranked) => ranked.Length % 2 == 1
        ? ranked[ranked.Length / 2]
        : (ranked[(ranked.Length / 2) - 1] + ranked[ranked.Length / 2]) / 2;
}
