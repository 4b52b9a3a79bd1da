using Rookery.Drawing;
using Rookery.Experiments.Claims;
using Rookery.Lab.Browser;
using Rookery.Lab.Shell;
using Rookery.Lab.Texts;

namespace Rookery.Lab.Studies;

/// <summary>The figure of a study: every run a point that leads to it.</summary>
internal static class StudyScene
{
    /// <summary>
    /// The most points of a figure in the page, which interprets what draws them; a saved one has as many as elsewhere.
    /// </summary>
    private const int PointsInPage = 500;

    /// <summary>Draws the runs for the page.</summary>
    /// <param name="sums">What they came to.</param>
    /// <param name="frame">The size.</param>
    /// <param name="texts">The language.</param>
    public static Scene Draw(StudySums sums, Frame frame, LabTexts texts)
    {
        frame = frame with { Words = texts.Figures };
        return sums.Plan.Kind == StudyKind.Curve
            ? SpeedUpView.Draw(CurveOf(sums), new() { Frame = frame, PointsMax = PointsInPage })
            : ComparisonView.Draw(ComparisonOf(sums, texts), new() { Frame = frame, PointsMax = PointsInPage });
    }

    /// <summary>Draws the runs as a figure of its own, for a slide.</summary>
    /// <param name="sums">What they came to.</param>
    /// <param name="verdict">The verdict of a claim.</param>
    /// <param name="texts">The language.</param>
    public static Scene DrawSlide(StudySums sums, ClaimResult? verdict, LabTexts texts)
    {
        var frame = new Frame { Words = texts.Figures };
        if (sums.Plan.Kind == StudyKind.Curve)
            return SpeedUpView.Draw(CurveOf(sums), new() { Frame = frame });
        string finding = verdict is null
            ? "" : $"{texts["study.verdict." + verdict.Verdict]}. {texts.Claims.Reason(verdict)}";
        return ComparisonView.Draw(ComparisonOf(sums, texts) with { Finding = finding }, new() { Frame = frame });
    }

    /// <summary>Draws a small figure of each kind for nobody, while nothing else is to be done.</summary>
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
        Scene scene = SpeedUpView.Draw(curve, new());
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
            new());
    }

    /// <summary>What a curve is drawn from.</summary>
    public static SpeedUpData CurveOf(StudySums sums)
    {
        StudyPlan plan = sums.Plan;
        string own = plan.Inputs.Setup.Choices.GetValueOrDefault("scheduler", Simulation.Scheduler.Named[0].Name);
        var series = sums.Groups.GroupBy(
            group => plan.Sweep.Factors.Length == 1 ? own : group.Summary.Treatment.Levels[0],
            group => group.Curve);
        return new()
        {
            Program = plan.Inputs.Program.Name,
            WorkTicks = sums.WorkTicks,
            SpanTicks = sums.SpanTicks,
            Series =
            [
                .. series.Select(runs => new SpeedUpSeries(runs.Key, [.. runs.SelectMany(one => one)]))
                    .Where(one => one.Runs.Length > 0),
            ],
        };
    }

    private static ComparisonData ComparisonOf(StudySums sums, LabTexts texts)
    {
        StudyPlan plan = sums.Plan;
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
            Groups = [.. sums.Groups.Select(GroupOf).OfType<ComparisonGroup>()],
            ArePaired = plan.Sweep.Treatments.Length == 2 && sums.Groups.All(group => group.Summary.Missing == 0),
        };
    }

    private static ComparisonGroup? GroupOf(StudyGroup group) =>
        group.Summary is { Values: { } values, Interval: { } interval } summary
            ? new(summary.Treatment.Index, 0, values.Values, values.Mean, interval.Low, interval.High)
            {
                Targets = group.Targets,
            }
            : null;
}
