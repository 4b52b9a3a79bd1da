using Rookery.Lessons.Blocks;
using Rookery.Lessons.Site;
using Rookery.Programs;
using Rookery.Simulation;
using Rookery.Traces;

namespace Rookery.Lessons.Tests;

/// <summary>Exhibits: what is computed is what the simulator computes, and every field does what it says.</summary>
public sealed class ExhibitTests
{
    private const string Usual = "program: count.fj\nworkers: 4\nmachine: unit\nseed: 7\n";

    [Fact]
    public void Measures_OfAnExhibit_AreThoseOfTheRun()
    {
        Built built = Built.Of(Built.Exhibit(Usual
            + "set: { grain: 10 }\nscheduler: { victim: lowest, amount: half }"));

        RunResult run = Run(10, new Scheduler().With("victim", "lowest").With("amount", "half"));
        Assert.True(Audit.Of(run.Trace!).IsLawful);
        Assert.Equal($"{run.Measures.Makespan}", Measure(built, "makespan"));
        Assert.Equal($"{run.Measures.Steals}", Measure(built, "steals"));
        Assert.Equal($"{run.Measures.Deviations}", Measure(built, "deviations"));
        Assert.Equal($"{run.Measures.IdleWhileTasksWaited}", Measure(built, "idleWhileTasksWaited"));
        Assert.Equal("10", Measure(built, "param.grain"));
    }

    // Cormen, Leiserson, Rivest, Stein, 3rd ed., exercise 27.1-2: fib(5) has work 29 and span 10 with a unit a strand.
    [Fact]
    public void Text_PrintsTheTextbooksNumbers()
    {
        const string fib = """
            task fib(n)
                if n <= 1
                    work 1
                else
                    work 1
                    fork fib(n - 1)
                    work 1
                    call fib(n - 2)
                    join
                    work 1
            start fib(5)
            """;
        Built built = Built.Of(
            Built.Exhibit("program: fib.fj", "W {= work } S {= span } P {= parallelism as 1 }."),
            new MemoryFiles().Put("fib.fj", fib));

        Assert.Contains(
            "W <span class=\"number\">29</span> S <span class=\"number\">10</span> P <span "
                + "class=\"number\">2.9</span>.",
            built.Page, StringComparison.Ordinal);
    }

    [Fact]
    public void Text_NamesExhibits_AlsoThoseBelow()
    {
        Built built = Built.Of(Built.Exhibit(
            "name: four\n" + Usual,
            "A {= four.workers } {= one.workers } {= workers }.\n\n```exhibit\nname: one\nprogram: "
                + "count.fj\nworkers: 1\n```\n"
                + "\nB {= workers } {= four.makespan / makespan as 2 }."));

        Assert.Empty(built.Problems);
        Assert.Contains(
            "A <span class=\"number\">4</span> <span class=\"number\">1</span> <span class=\"number\">4</span>.",
            built.Page, StringComparison.Ordinal);
        Assert.Contains("B <span class=\"number\">1</span>", built.Page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{= steals }", "LS036")]
    [InlineData("{= stels }", "LS031")]
    [InlineData("{= steals as bananas }", "LS037")]
    [InlineData("{= }", "LS030")]
    public void Text_NumberThatSaysNothing_IsRefused(string text, string code)
    {
        Built built = Built.Of(Built.Lesson(text));

        Assert.Equal([code], built.Codes);
        Assert.Equal(5, built.Problems[0].Diagnostic.Span.Line);
    }

    [Fact]
    public void Text_NumberInCodeOrUnclosed_StaysAsItIs()
    {
        Built built = Built.Of(Built.Lesson("`{= steals }` and {= steals\nand { = steals }"));

        Assert.Empty(built.Problems);
        Assert.Contains("<code>{= steals }</code> and {= steals", built.Page, StringComparison.Ordinal);
    }

    [Fact]
    public void Expectation_Missed_SaysTheNumbersOfBothSides()
    {
        Built built = Built.Of(Built.Exhibit(Usual + "expect:\n  - finished\n  - tasks > 2 * 10 + 1"));

        Problem problem = Assert.Single(built.Problems);
        Assert.True(problem.IsMiss);
        Assert.Equal(("LS040", 12, 5), (problem.Diagnostic.Code, problem.Diagnostic.Span.Line,
            problem.Diagnostic.Span.Column));
        Assert.Contains("the left side is 15 and the right side 21; tasks = 15", problem.Diagnostic.What,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Expectation_OfAnUnknownMeasure_IsWrongAndNoMiss()
    {
        Built built = Built.Of(Built.Exhibit(Usual + "expect: [ stolenWrok.mean > 1 ]"));

        Assert.Equal(["LS031"], built.Codes);
        Assert.False(built.Problems[0].IsMiss);
        Assert.Contains("Did you mean stolenWork.mean?", built.Said, StringComparison.Ordinal);
    }

    [Fact]
    public void Expectation_MayCompareExhibits()
    {
        string second = $"```exhibit\n{Usual}expect: [ work = one.work, makespan < one.makespan, bounds.work <= "
            + $"makespan ]\n```";

        Assert.Empty(Built.Of(Built.Exhibit("name: one\nprogram: count.fj\nworkers: 1\nmachine: unit",
            second)).Problems);
    }

    [Fact]
    public void Stop_SeveralMoments_MakeAStripInTheirOrder()
    {
        Built built = Built.Of(Built.Exhibit(Usual + "stop: [first fork, first steal, step 42, end]"));

        Assert.Equal(["first fork", "first steal", "step 42", "end"], built.Results[0].Figures.Select(one =>
            one.Moment));
        Assert.Equal(43, built.Results[0].Figures[2].Step);
        Assert.All(built.Results[0].Figures, figure =>
            Assert.StartsWith(figure.Narration, figure.Description, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("stop: starved", "MO002")]
    [InlineData("stop: frst steal", "MO001")]
    [InlineData("stop: step 100000", "MO002")]
    public void Stop_NoSuchMoment_SaysWhere(string stop, string code)
    {
        Built built = Built.Of(Built.Exhibit(Usual + stop));

        Assert.Equal([code], built.Codes);
        Assert.Equal(10, built.Problems[0].Diagnostic.Span.Line);
    }

    [Fact]
    public void Show_AllViews_AreThere()
    {
        Built built = Built.Of(Built.Exhibit(
            Usual + "show: [deques, timeline, tree, stolen-work, steals, speed-up, program, measures, laws]"));

        Assert.Equal(
            ["deques-1", "timeline", "tree", "stolen-work", "steals", "speed-up"],
            built.Results[0].Figures.Select(one => one.Id));
        Assert.Equal(2, built.Results[0].Tables.Length);
        Assert.Contains("<li><code>    if hi - lo &lt;= grain</code></li>", built.Page, StringComparison.Ordinal);
        Assert.Contains("Tp ≥ T1 / P", built.Page, StringComparison.Ordinal);
    }

    [Fact]
    public void Starved_Run_IsAnAnswer()
    {
        Built built = Built.Of(Built.Exhibit(
            "program: count.fj\nworkers: 1\nscheduler: shared-queue\nstop: starved\nexpect: [ starved, not "
                + "finished ]"));

        Assert.Empty(built.Problems);
        Assert.Equal("0", built.Results[0].Measures.Single(one => one.Name == "span").Denominator);
    }

    [Fact]
    public void Program_Wrong_ShowsBothPlaces()
    {
        Built built = Built.Of(Built.Exhibit("program: bad.fj"),
            new MemoryFiles().Put("bad.fj", "task f()\n    wrk 1\nstart f()\n"));

        Assert.Equal("LS042", built.Codes.First());
        Assert.Contains("bad.fj:2:", built.Said, StringComparison.Ordinal);
        Assert.Contains("lesson.md:6:10", built.Said, StringComparison.Ordinal);
    }

    [Fact]
    public void Program_Missing_SuggestsOneOfTheFolder() =>
        Assert.Contains("Did you mean count.fj?", Built.Of(Built.Exhibit("program: cuont.fj")).Said,
            StringComparison.Ordinal);

    [Fact]
    public void Set_UnknownParameter_PointsAtItInTheLesson()
    {
        Built built = Built.Of(Built.Exhibit(Usual + "set: { grian: 5 }"));

        Assert.Contains("lesson.md:10:8: error LS007", built.Said, StringComparison.Ordinal);
        Assert.Contains("Did you mean grain?", built.Said, StringComparison.Ordinal);
    }

    [Fact]
    public void Set_OutOfRange_IsRefused() =>
        Assert.NotEmpty(Built.Of(Built.Exhibit(Usual + "set: { grain: 5000 }")).Problems);

    [Fact]
    public void Player_LongRun_CarriesAWindowAndSaysSo()
    {
        Built built = Built.Of(
            Built.Exhibit("program: count.fj\nset: { grain: 1 }\nworkers: 8\nmachine: unit\nstop: last steal"));

        BlockPlayer player = built.Results[0].Player!;
        Assert.True(player.IsWindow);
        Assert.InRange(built.Results[0].Figures[0].Step, player.First, player.Last);
        Assert.InRange(player.Last - player.First, 1, LessonLimits.FramesMax);
        Assert.Contains($"This page carries steps {player.First} to {player.Last} of {player.All}.", built.Page,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Player_AskedSteps_AreCarried()
    {
        BlockPlayer player = Built.Of(Built.Exhibit(Usual + "steps: 10..20\nstop: step 12")).Results[0].Player!;

        Assert.Equal((10, 21), (player.First, player.Last));
    }

    [Fact]
    public void Player_Off_IsNotThere()
    {
        Built built = Built.Of(Built.Exhibit(Usual + "player: off"));

        Assert.Null(built.Results[0].Player);
        Assert.DoesNotContain("rk-player", built.Page, StringComparison.Ordinal);
    }

    [Fact]
    public void Files_OfALesson_AreSvgPngPdfAndSlides()
    {
        Built built = Built.Of(Built.Exhibit(Usual + "stop: [first fork, end]\ncaption: What waits."));

        string[] paths = [.. built.Files.Select(file => file.Path)];
        Assert.Contains("figures/lesson/exhibit-1-deques-2.svg", paths);
        Assert.Contains("figures/lesson/exhibit-1-deques-2.png", paths);
        Assert.Contains("figures/lesson/exhibit-1-deques-2.pdf", paths);
        DeckFile deck = built.Files.OfType<DeckFile>().Single();
        Assert.Equal(["First fork", "End"], deck.Slides.Select(slide => slide.Title));
        Assert.All(deck.Slides, slide => Assert.StartsWith("What waits.\n", slide.Notes, StringComparison.Ordinal));
        Assert.All(deck.Slides, slide => Assert.NotEmpty(slide.Alternative));
    }

    [Fact]
    public void SameLesson_Twice_IsTheSameBytes()
    {
        string lesson = Built.Exhibit(Usual + "show: [deques, timeline, tree, speed-up, measures]", "{= steals }");

        Assert.Equal(Texts(Built.Of(lesson)), Texts(Built.Of(lesson)));
        static IEnumerable<string> Texts(Built built) =>
            built.Files.OfType<TextFile>().Select(file => file.Path + file.Text);
    }

    [Fact]
    public void Key_ChangesWithEverythingThatMatters_AndOnlyWithThat()
    {
        string[] fields =
        [
            "", "workers: 3", "seed: 8", "set: { grain: 5 }", "machine: typical", "machine: { base: unit, wake: 7 }",
            "scheduler: work-first", "scheduler: { patience: 3 }", "show: tree", "stop: end", "steps: 1..5",
                "player: off",
        ];
        string[] keys = [.. fields.Select(field => KeyOf($"program: count.fj\n{field}", new()))];

        Assert.Equal(keys.Length, keys.Distinct().Count());
        Assert.NotEqual(keys[0], KeyOf("program: count.fj",
            new MemoryFiles().Put("count.fj", MemoryFiles.Count + "\n# more")));
        Assert.Equal(keys[0], KeyOf("program: count.fj\ncaption: Other words\nexpect: finished\nname: x", new()));
    }

    [Fact]
    public void Key_ChangesWithTheData()
    {
        const string program = "data d = \"d.csv\" column \"us\"\ntask t()\n    work sum(d, 0, len(d))\nstart t()\n";

        Assert.NotEqual(
            KeyOf("program: p/a.fj", new MemoryFiles().Put("p/a.fj", program).Put("p/d.csv", "us\n5\n")),
            KeyOf("program: p/a.fj", new MemoryFiles().Put("p/a.fj", program).Put("p/d.csv", "us\n6\n")));
    }

    private static string KeyOf(string fields, MemoryFiles files) =>
        LessonReader.Read("a.md", Built.Exhibit(fields)).OrThrow().Blocks[0].KeyOf(files);

    private static string Measure(Built built, string name) =>
        built.Results[0].Measures.Single(measure => measure.Name == name).Numerator;

    private static RunResult Run(long grain, Scheduler scheduler)
    {
        BindInputs inputs = BindInputs.Default with { Seed = 7 };
        inputs = inputs with { Parameters = inputs.Parameters.Add("grain", grain) };
        BoundProgram program = ProgramReader.Read("count.fj", MemoryFiles.Count).OrThrow().Bind(inputs).OrThrow();
        return Simulator.Record(program, new() { Workers = 4, Machine = Machine.Unit, Scheduler = scheduler });
    }
}
