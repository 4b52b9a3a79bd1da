using System.Globalization;
using Rookery.Drawing;
using Rookery.Experiments;
using Rookery.Experiments.Statistics;
using Rookery.Lab.Browser;
using Rookery.Lab.Shell;
using Rookery.Lab.Texts;
using Rookery.Traces.Measuring;

namespace Rookery.Lab.Studies;

/// <summary>The figure of a study: every run a point that leads to it.</summary>
internal static class StudyScene
{
    /// <summary>A figure of one's own for a slide.</summary>
    public static Frame Slide { get; } = new();

    /// <summary>Draws the runs so far.</summary>
    /// <param name="work">The study.</param>
    /// <param name="frame">The size.</param>
    /// <param name="texts">The language.</param>
    public static Scene Draw(StudyWork work, Frame frame, LabTexts texts)
    {
        frame = frame with { Words = texts.Figures };
        return work.Plan.Kind == StudyKind.Curve
            ? SpeedUpView.Draw(CurveOf(work), new() { Frame = frame })
            : ComparisonView.Draw(ComparisonOf(work, frame.ShowHeading, texts), new() { Frame = frame });
    }

    /// <summary>
    /// Draws a small figure of each kind for nobody, while nothing else is to be done. Code that runs for the first
    /// time takes several times as long where a page interprets it: that is better paid before runs are made than
    /// between two.
    /// </summary>
    /// <param name="page">The page that must not be held up.</param>
    public static async Task RehearseAsync(IPage page)
    {
        var curve = new SpeedUpData
        {
            Program = "",
            WorkTicks = 8,
            SpanTicks = 2,
            Series = [new("", [new(1, 8, ""), new(2, 5, "")])],
        };
        await page.IdleAsync().ConfigureAwait(true);
        Scene scene = SpeedUpView.Draw(curve, new() { Frame = Slide });
        await page.IdleAsync().ConfigureAwait(true);
        SvgWriter.Write(scene);
        await page.IdleAsync().ConfigureAwait(true);
        ComparisonView.Draw(
            new()
            {
                Title = "",
                Subtitle = "",
                Measure = "",
                Columns = ["a", "b"],
                Series = [""],
                Groups = [new(0, 0, [1, 2], 1.5, 1, 2), new(1, 0, [2, 3], 2.5, 2, 3)],
                ArePaired = true,
            },
            new() { Frame = Slide });
    }

    /// <summary>What a curve is drawn from: runs whose work is that of the first, since speed-up is T1/Tp.</summary>
    public static SpeedUpData CurveOf(StudyWork work)
    {
        StudyPlan plan = work.Plan;
        long worked = work.Cells.Count == 0 ? 0 : (long)ValueOf(work.Cells[0], "work");
        CellResult[] alike = [.. work.Cells.Where(cell => !cell.IsStarved && ValueOf(cell, "work") == worked)];
        int workersAt = plan.Sweep.Factors.Length - 1;
        var series = alike.GroupBy(cell => workersAt == 0 ? "" : plan.Sweep.CellAt(cell.Cell).Treatment.Levels[0]);
        string own = plan.Inputs.Setup.Choices.GetValueOrDefault("scheduler", Simulation.Scheduler.Named[0].Name);
        return new()
        {
            Program = plan.Inputs.Program.Name,
            WorkTicks = worked,
            SpanTicks = (long)alike.Select(cell => ValueOf(cell, "span")).DefaultIfEmpty(0).First(),
            Series =
            [
                .. series.Select(group => new SpeedUpSeries(
                    group.Key.Length == 0 ? own : group.Key, [.. group.Select(cell => RunOf(plan, cell, workersAt))])),
            ],
        };
    }

    /// <summary>Runs that a curve leaves out: those that starved, or whose seed gives them other work.</summary>
    public static int LeftOut(StudyWork work) => work.Plan.Kind != StudyKind.Curve
        ? 0
        : work.Cells.Count - CurveOf(work).Series.Sum(series => series.Runs.Length);

    private static SpeedUpRun RunOf(StudyPlan plan, CellResult cell, int workersAt) => new(
        int.Parse(plan.Sweep.CellAt(cell.Cell).Treatment.Levels[workersAt], CultureInfo.InvariantCulture),
        (long)ValueOf(cell, "makespan"), TargetOf(cell));

    private static ComparisonData ComparisonOf(StudyWork work, bool standsAlone, LabTexts texts)
    {
        StudyPlan plan = work.Plan;
        string what = plan.Claim is null ? plan.Sweep.Factors[0].ShortName : texts.Claims.Rule(plan.Claim);
        return new()
        {
            Title = plan.Claim is null
                ? texts.Of("study.title", plan.Inputs.Program.Name, plan.Measure.Name, what) : what,
            Subtitle = texts.Of("study.subtitle", Numbers.Whole(plan.Sweep.SeedCount), StudyPlan.ConfidencePercent),
            Measure = plan.Measured(texts),
            ColumnsAre = plan.Claim is null ? what : "",
            Columns = [.. plan.Sweep.Treatments.Select(one => plan.Claim is null ? one.Levels[0] : one.Label)],
            Series = [""],
            Groups = [.. plan.Sweep.Treatments.Select(one => GroupOf(work, one)).OfType<ComparisonGroup>()],
            ArePaired = plan.Sweep.Treatments.Length == 2,
            Finding = standsAlone && work.Verdict is { } verdict
                ? $"{texts["study.verdict." + verdict.Verdict]}. {texts.Claims.Reason(verdict)}"
                : "",
        };
    }

    private static ComparisonGroup? GroupOf(StudyWork work, Treatment treatment)
    {
        int at = MeasureNames.All.IndexOf(work.Plan.Measure);
        CellResult[] cells =
        [
            .. work.Cells.Where(cell => cell.Cell % work.Plan.Sweep.Treatments.Length == treatment.Index
                && cell.Values[at].HasValue),
        ];
        if (cells.Length == 0)
            return null;
        var sample = new Sample(cells.Select(cell => cell.Values[at].ToDouble()));
        var interval = Interval.OfMean(sample, StudyPlan.Confidence);
        return new(treatment.Index, 0, sample.Values, sample.Mean, interval.Low, interval.High)
        {
            Targets = [.. cells.Select(TargetOf)],
        };
    }

    private static string TargetOf(CellResult cell) =>
        string.Create(CultureInfo.InvariantCulture, $"cell={cell.Cell}");

    private static double ValueOf(CellResult? cell, string measure) =>
        cell is null ? 0 : cell.Values[MeasureNames.All.IndexOf(MeasureNames.Find(measure)!)].ToDouble();
}
