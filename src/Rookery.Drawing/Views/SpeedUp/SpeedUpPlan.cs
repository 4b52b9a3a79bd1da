using System.Collections.Immutable;

namespace Rookery.Drawing;

/// <summary>The points of a speed-up figure, and the ranges of its axes.</summary>
internal sealed record SpeedUpPlan
{
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
        var groups = GroupsOf(data);
        var perGroup = Math.Max(3, options.PointsMax / Math.Max(1, groups.Count));
        ImmutableArray<(int Series, int Workers, double SpeedUp, string Target)> kept =
        [
            .. groups.SelectMany(group => Ranking.Thinned(group.Ranked, perGroup).Select(
                run => (group.Series, group.Workers, group.SpeedUps[run], group.Targets[run]))),
        ];
        var medians = data.Series.Select((_, index) => groups.Where(group => group.Series == index)
            .Select(group => (group.Workers, group.Median)).ToImmutableArray());
        var all = groups.Sum(group => group.Ranked.Length);
        var workersMax = groups.Select(group => group.Workers).DefaultIfEmpty(1).Max();
        var least = groups.Select(group => group.Workers).DefaultIfEmpty(1).Min();
        var most = groups.Select(group => group.AtRank(group.Ranked.Length - 1)).DefaultIfEmpty(1).Max();
        return new SpeedUpPlan
        {
            Points = kept,
            Medians = [.. medians],
            Dropped = all - kept.Length,
            WithoutTime = data.Series.Sum(series => series.Runs.Length) - all,
            IsLogarithmic = options.IsLogarithmic ?? workersMax / 32 > least,
            WorkersMax = workersMax,
            SpeedUpMax = TopOf(data, options, most, workersMax),
            SpeedUpMin = groups.Select(group => group.AtRank(0)).DefaultIfEmpty(1).Min(),
        };
    }

    private static List<RankedRuns> GroupsOf(SpeedUpData data)
    {
        var groups = new List<RankedRuns>();
        for (var series = 0; series < data.Series.Length; series++)
        {
            var found = new SortedDictionary<int, (List<double> SpeedUps, List<string> Targets)>();
            (int Workers, List<double> SpeedUps, List<string> Targets) last = (0, [], []);
            foreach (var run in data.Series[series].Runs)
            {
                if (run.Makespan <= 0 || data.WorkTicks <= 0)
                    continue;

                // Most often the next run has as many workers as the last one.
                if (run.Workers != last.Workers)
                {
                    if (!found.TryGetValue(run.Workers, out var lists))
                        found.Add(run.Workers, lists = ([], []));
                    last = (run.Workers, lists.SpeedUps, lists.Targets);
                }

                last.SpeedUps.Add((double)data.WorkTicks / run.Makespan);
                last.Targets.Add(run.Target ?? "");
            }

            foreach (var (workers, (speedUps, targets)) in found)
                groups.Add(new(series, workers, [.. speedUps], [.. targets]));
        }

        return groups;
    }

    // The axis ends where linear speed-up does, or a little above the ceiling when that is much lower.
    private static double TopOf(SpeedUpData data, SpeedUpOptions options, double observed, int workersMax)
    {
        var ceiling = data.SpanTicks > 0 ? (double)data.WorkTicks / data.SpanTicks : double.PositiveInfinity;
        var lawTop = options.ShowLaws ? Math.Min(workersMax, ceiling * 1.25) : 0;
        return Math.Max(1, Math.Max(observed, lawTop)) * 1.06;
    }

    /// <summary>The runs of one series and number of workers that took any time.</summary>
    private sealed class RankedRuns(int series, int workers, double[] speedUps, string[] targets)
    {
        public int Series => series;

        public int Workers => workers;

        public double[] SpeedUps => speedUps;

        public string[] Targets => targets;

        public int[] Ranked { get; } = Ranking.Of(speedUps);

        public double Median => (AtRank((Ranked.Length - 1) / 2) + AtRank(Ranked.Length / 2)) / 2;

        public double AtRank(int rank) => speedUps[Ranked[rank]];
    }
}
