using Rookery.Drawing;
using Rookery.Experiments;
using Rookery.Experiments.Claims;
using Rookery.Experiments.Words;
using Rookery.Lab.Documents;
using Rookery.Lab.Session;
using Rookery.Lab.Studies;
using Rookery.Lab.Tests.Support;
using Rookery.Notation;
using Rookery.Programs;
using Rookery.Simulation;
using Rookery.Traces;

namespace Rookery.Lab.Tests.Studies;

public sealed class StudyTests
{
    private static readonly Inputs Count = new(DemoPrograms.Find(DemoPrograms.First)!, Setup.Plain);

    // Nobody awaits it in the page: a mistake in it would not be seen there.
    [Theory]
    [InlineData("20")]
    [InlineData("none")]
    public async Task Rehearsal_OfAStudyAndItsFigures_EndsWithoutAMistake(string seeds)
    {
        var page = new RecordingPage();
        using LabSession session = await Made.SessionAsync(DemoPrograms.First, page: page);
        var studies = new StudySession(session, page);
        studies.Fill(studies.Form with { Seeds = seeds });
        Task rehearsing = studies.RehearseAsync();
        while (!rehearsing.IsCompleted)
        {
            page.Rest();
            await Task.Yield();
        }

        await rehearsing;
        Assert.Empty(page.Drawn);
    }

    [Fact]
    public async Task RunAsync_ASweep_HasTheResultsOfItsCells()
    {
        var plan = StudyPlan.Of(new() { Kind = StudyKind.Sweep, Seeds = "3" }, Count);
        var page = new RecordingPage();
        var work = new StudyWork(plan, page);
        await work.RunAsync(() => { }, () => Task.CompletedTask);
        Assert.Equal(18, work.Cells.Count);
        Assert.True(page.Breaths > 5, "it held the page up");
        foreach (CellResult cell in work.Cells)
        {
            Assert.Equal(plan.Sweep.Run(cell.Cell).Values, cell.Values);
            AssertLawful(plan, cell.Cell);
        }
    }

    [Fact]
    public async Task RunAsync_AClaim_DecidesAsTheClaimItself()
    {
        var plan = StudyPlan.Of(new() { Kind = StudyKind.Claim, Seeds = "6", Measure = "steals" }, Count);
        var work = new StudyWork(plan, new RecordingPage());
        await work.RunAsync(() => { }, () => Task.CompletedTask);
        ClaimResult expected = plan.Claim!.Decide(work.Cells);
        Assert.Equal(expected.Verdict, work.Verdict!.Verdict);
        Assert.Equal(ClaimWords.English.Reason(expected), ClaimWords.English.Reason(work.Verdict));
        Assert.Equal(Verdict.Supported, work.Verdict.Verdict);
        AssertLawful(plan, 0);
    }

    [Fact]
    public async Task RunAsync_ManyRuns_SumsThemUpOnTheWayAndWaitsUntilThatIsShown()
    {
        var plan = StudyPlan.Of(
            new() { Kind = StudyKind.Sweep, Choice = "workers", Levels = "1,3,7", Seeds = "40" }, Count);
        var work = new StudyWork(plan, new RecordingPage());
        var shown = new List<StudySums>();
        await work.RunAsync(() => { }, async () =>
        {
            int runs = work.Cells.Count;
            shown.Add(work.Sums!);
            await Task.Yield();
            Assert.Equal(runs, work.Cells.Count);
        });
        Assert.InRange(shown.Count, 2, 7);
        foreach (StudySums sums in shown.Append(work.Sums!))
        {
            var expected = TreatmentSummary.Of(
                plan.Sweep, [.. work.Cells.Take(sums.Runs)], plan.Measure, StudyPlan.Confidence);
            foreach ((StudyGroup group, TreatmentSummary summary) in sums.Groups.Zip(expected))
            {
                Assert.Equal(summary.Treatment, group.Summary.Treatment);
                Assert.Equal(summary.Values!.Values, group.Summary.Values!.Values);
                Assert.Equal(summary.Interval, group.Summary.Interval);
                Assert.Equal(summary.Missing, group.Summary.Missing);
            }
        }

        Assert.Equal(120, work.Sums!.Runs);
        AssertLawful(plan, 119);
    }

    [Fact]
    public async Task Cancel_OfAClaim_KeepsItsRunsAndGivesNoVerdict()
    {
        var plan = StudyPlan.Of(new() { Kind = StudyKind.Claim, Seeds = "50" }, Count);
        var work = new StudyWork(plan, new RecordingPage());
        await work.RunAsync(work.Cancel, () => Task.CompletedTask);
        Assert.True(work.IsIncomplete);
        Assert.InRange(work.Cells.Count, 1, 99);
        Assert.Null(work.Verdict);
        Assert.Contains("data-target=\"cell=0\"", Svg(work), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Draw_ACurveOfTwoSchedulers_HasAPointForEachRunThatLeadsToIt()
    {
        var plan = StudyPlan.Of(new() { Workers = "1,2,4", Beside = "greedy", Seeds = "2" }, Count);
        var work = new StudyWork(plan, new RecordingPage());
        await work.RunAsync(() => { }, () => Task.CompletedTask);
        string svg = Svg(work);
        for (int cell = 0; cell < plan.Sweep.CellCount; cell++)
            Assert.Contains($"data-target=\"cell={cell}\"", svg, StringComparison.Ordinal);
        Assert.Equal(["work-stealing", "greedy"], StudyScene.CurveOf(work.Sums!).Series.Select(series => series.Name));
        Assert.Equal(0, work.Sums!.LeftOut);
    }

    [Fact]
    public void InputsOf_ACell_AreThoseOfThatVeryRun()
    {
        var plan = StudyPlan.Of(
            new() { Kind = StudyKind.Sweep, Seeds = "4" }, Count with { Setup = Setup.Read("seed=9 workers=3") });
        Inputs inputs = plan.InputsOf(7);
        (Treatment treatment, long seed) = plan.Sweep.CellAt(7);
        Assert.Equal(10, seed);
        Assert.Equal(seed, inputs.Setup.Seed);
        Assert.Equal($"seed=10 victim={treatment.Levels[0]} workers=3", inputs.Setup.ToString());
        AssertLawful(plan, 7);
    }

    [Theory]
    [InlineData("victim", "random,nobody", "20")]
    [InlineData("workers", "1..", "20")]
    [InlineData("workers", "1..100", "1000")]
    [InlineData("workers", "1..65", "1")]
    [InlineData("nothing", "1", "20")]
    [InlineData("workers", "1,2", "0")]
    [InlineData("workers", "1,2", "many")]
    public void Of_Nonsense_SaysWhatIsWrong(string choice, string levels, string seeds)
    {
        var wrong = Assert.Throws<InputException>(() => StudyPlan.Of(
            new() { Kind = StudyKind.Sweep, Choice = choice, Levels = levels, Seeds = seeds }, Count));
        Assert.NotEmpty(wrong.Diagnostics[0].What);
    }

    [Fact]
    public void LevelsOf_EveryChoiceOfEveryDemoProgram_MakeAFactor()
    {
        foreach (string name in DemoPrograms.Names)
        {
            FjProgram program = ProgramReader.Read(name, DemoPrograms.TextOf(name)!).OrThrow();
            string[] parameters = [.. program.Parameters.Select(parameter => parameter.Name)];
            foreach (string choice in StudyChoices.Of(program).SelectMany(kind => kind.Names))
            {
                var factor = Factor.Of(choice, StudyChoices.LevelsOf(choice, program), [.. parameters]);
                Assert.Equal(choice, factor.Name);
                Assert.NotEmpty(factor.Levels);
            }
        }
    }

    private static string Svg(StudyWork work) =>
        SvgWriter.Write(StudyScene.DrawSlide(work.Sums!, work.Verdict, new()));

    private static void AssertLawful(StudyPlan plan, int cell)
    {
        Inputs inputs = plan.InputsOf(cell);
        BoundProgram program = plan.Sweep.Subject.Program.Bind(new(
            inputs.Setup.Parameters, plan.Sweep.Subject.Data, inputs.Setup.Seed, EvaluationLimits.Default)).OrThrow();
        Trace trace = Simulator.Record(program, inputs.Setup.ToSettings()).Trace!;
        Assert.True(Audit.Of(trace).IsLawful, $"cell {cell}");
    }
}
