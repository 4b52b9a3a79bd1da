using System.Text.Json;
using System.Xml.Linq;
using SkiaSharp;

namespace Rookery.Tests.CommandLine;

/// <summary>What commands give for inputs that are right.</summary>
public sealed class OutcomeTests
{
    private static readonly string[] RunKeys =
    [
        "program", "parameters", "workers", "seed", "scheduler", "machine", "outcome", "tasks", "work", "span",
        "parallelism", "makespan", "speedup", "utilisation", "steals", "probes", "emptyProbes", "lostRaces",
        "stolenWork", "deepestDeque", "liveTasks", "sleeps", "wakes", "idleWhileTasksWaited", "deviations", "bounds",
        "events",
    ];

    [Fact]
    public void RunJson_Program_HasTheKeysOfTheDesignInOrder()
    {
        using var run = new TestRun();

        Assert.Equal(0, run.Run("run", run.Put("count.fj", TestRun.Count), "--json"));

        using var json = JsonDocument.Parse(run.Output);
        Assert.Equal(RunKeys, KeysOf(json.RootElement));
        Assert.Equal(["mean", "median", "max", "share"], KeysOf(json.RootElement.GetProperty("stolenWork")));
        Assert.Equal(["work", "span", "greedy"], KeysOf(json.RootElement.GetProperty("bounds")));
        Assert.Equal(Simulation.Scheduler.OptionNames, KeysOf(json.RootElement.GetProperty("scheduler")));
        Assert.Equal(Simulation.Machine.CostNames, KeysOf(json.RootElement.GetProperty("machine")));
        Assert.Equal("count.fj", json.RootElement.GetProperty("program").GetString());
        Assert.Empty(run.Errors);
    }

    [Fact]
    public void RunJson_OneWorkerOnIdealMachine_TakesExactlyTheWork()
    {
        // 200 leaves of work and 2 for each of the 31 joins: 32 pieces of at most 10.
        using var run = new TestRun();

        run.Run("run", run.Put("count.fj", TestRun.Count), "--workers", "1", "--json");

        using var json = JsonDocument.Parse(run.Output);
        Assert.Equal(262, json.RootElement.GetProperty("work").GetInt64());
        Assert.Equal(262, json.RootElement.GetProperty("makespan").GetInt64());
        Assert.Equal(1.0, json.RootElement.GetProperty("speedup").GetDouble());
        Assert.Equal(63, json.RootElement.GetProperty("tasks").GetInt64());
    }

    [Fact]
    public void RunJson_Options_ArriveInTheRun()
    {
        using var run = new TestRun();

        run.Run(
            "run", run.Put("count.fj", TestRun.Count), "--json", "--workers", "2", "--seed", "-7", "--set", "grain=50",
            "--scheduler", "work-first", "--victim", "lowest", "--amount", "half", "--patience", "9",
            "--machine", "unit", "--cost", "steal=50", "--cores", "3");

        using var json = JsonDocument.Parse(run.Output);
        JsonElement root = json.RootElement;
        Assert.Equal(2, root.GetProperty("workers").GetInt32());
        Assert.Equal(-7, root.GetProperty("seed").GetInt64());
        Assert.Equal(50, root.GetProperty("parameters").GetProperty("grain").GetInt64());
        Assert.Equal("child", root.GetProperty("scheduler").GetProperty("fork-runs").GetString());
        Assert.Equal("lowest", root.GetProperty("scheduler").GetProperty("victim").GetString());
        Assert.Equal("half", root.GetProperty("scheduler").GetProperty("amount").GetString());
        Assert.Equal(9, root.GetProperty("scheduler").GetProperty("patience").GetInt32());
        Assert.Equal(50, root.GetProperty("machine").GetProperty("steal").GetInt64());
        Assert.Equal(1, root.GetProperty("machine").GetProperty("fork").GetInt64());
        Assert.Equal(3, root.GetProperty("machine").GetProperty("cores").GetInt32());
    }

    [Fact]
    public void RunJson_WithAndWithoutARecordedTrace_IsTheSame()
    {
        using var run = new TestRun();
        string path = run.Put("count.fj", TestRun.Count);

        run.Run("run", path, "--json", "--machine", "unit");
        string plain = run.Output;
        Assert.Equal(0, run.Run("run", path, "--json", "--machine", "unit", "--trace", run.PathOf("run.csv")));

        Assert.Equal(plain, run.Output);
    }

    [Fact]
    public void Run_Program_SaysSentencesThenMeasuresThenLaws()
    {
        using var run = new TestRun();

        Assert.Equal(0, run.Run("run", run.Put("count.fj", TestRun.Count)));

        Assert.StartsWith("Four workers ran count.fj in ", run.Output, StringComparison.Ordinal);
        Assert.Contains("262 units of work in 63 tasks", run.Output, StringComparison.Ordinal);
        Assert.Matches(@"(?m)^Tp ≥ T1/P +\d+ ≥ 65\.5 +holds", run.Output);
        Assert.Matches(@"(?m)^Tp ≥ Tinf +\d+ ≥ \d+ +holds", run.Output);
        Assert.DoesNotContain('\u001b', run.Output);
        Assert.DoesNotContain('│', run.Output);
    }

    [Fact]
    public void Run_Starving_IsAnAnswerThatNamesTheCircle()
    {
        using var run = new TestRun();
        string path = run.Put("count.fj", TestRun.Count);

        Assert.Equal(0, run.Run("run", path, "--scheduler", "shared-queue", "--workers", "2"));

        Assert.Contains("The run starved at ", run.Output, StringComparison.Ordinal);
        Assert.Matches(
            @"Worker \d waits in count\(\d+, \d+\) at line 9 for count\(\d+, \d+\), which ",
            run.Output.ReplaceLineEndings(" "));
    }

    [Fact]
    public void RunSteps_Range_IsThoseLinesWithTheirNumbers()
    {
        using var run = new TestRun();

        Assert.Equal(0, run.Run("run", run.Put("count.fj", TestRun.Count), "--steps", "2..4"));

        string[] lines = run.Output.Split('\n');
        Assert.Matches(@"^ *step +time$", lines[0]);
        Assert.Matches(@"^ +2 +\d+  \S", lines[1]);
        Assert.Matches(@"^ +4 +\d+  \S", lines[3]);
        Assert.Empty(lines[4]);
    }

    [Fact]
    public void Analyse_Program_GivesWorkSpanAndParallelism()
    {
        using var run = new TestRun();

        Assert.Equal(0, run.Run("analyse", run.Put("count.fj", TestRun.Count), "--json"));

        using var json = JsonDocument.Parse(run.Output);
        Assert.Equal(["tasks", "work", "span", "parallelism", "deepest"], KeysOf(json.RootElement));
        Assert.Equal(262, json.RootElement.GetProperty("work").GetInt64());

        // Five levels of joins at 2 each, and the largest leaf: 200 halved five times and rounded up is 7.
        Assert.Equal(17, json.RootElement.GetProperty("span").GetInt64());
        Assert.Equal(6, json.RootElement.GetProperty("deepest").GetInt64());
    }

    [Theory]
    [InlineData("run.csv")]
    [InlineData("run.parquet")]
    public void Audit_TraceOfARun_IsLawful(string name)
    {
        using var run = new TestRun();
        string trace = run.PathOf(name);
        run.Run("run", run.Put("count.fj", TestRun.Count), "--machine", "unit", "--trace", trace);

        Assert.Equal(0, run.Run("audit", trace));

        Assert.Contains("is lawful", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Audit_TraceWithAnEventTakenOut_IsExitCode1AndListsFindings()
    {
        using var run = new TestRun();
        string trace = run.PathOf("run.csv");
        run.Run("run", run.Put("count.fj", TestRun.Count), "--machine", "unit", "--trace", trace);
        List<string> lines = [.. File.ReadAllLines(trace)];
        lines.RemoveAt(lines.FindIndex(line => line.Contains(",steal,", StringComparison.Ordinal)));
        File.WriteAllLines(trace, lines);

        Assert.Equal(1, run.Run("audit", trace));
        Assert.Contains("is not lawful", run.Output, StringComparison.Ordinal);

        Assert.Equal(1, run.Run("audit", trace, "--json"));
        using var json = JsonDocument.Parse(run.Output);
        Assert.False(json.RootElement.GetProperty("lawful").GetBoolean());
        Assert.NotEqual(0, json.RootElement.GetProperty("findings").GetArrayLength());
    }

    [Theory]
    [InlineData("deques")]
    [InlineData("timeline")]
    [InlineData("tree")]
    [InlineData("stolen-work")]
    [InlineData("steals")]
    [InlineData("speed-up")]
    public void Draw_EachView_IsAnSvgWithTitleAndDescription(string view)
    {
        using var run = new TestRun();
        string path = run.Put("count.fj", TestRun.Count);

        Assert.Equal(0, run.Run("draw", path, "--view", view, "--out", run.PathOf("a.svg"), "--machine", "unit"));

        XElement svg = XDocument.Load(run.PathOf("a.svg")).Root!;
        XNamespace space = "http://www.w3.org/2000/svg";
        Assert.Equal(space + "svg", svg.Name);
        Assert.Contains("count.fj", svg.Element(space + "title")!.Value, StringComparison.Ordinal);
        Assert.NotEmpty(svg.Element(space + "desc")!.Value);
    }

    [Fact]
    public void Draw_Moments_AreTheStateJustAfterThatStep()
    {
        using var run = new TestRun();
        string path = run.Put("count.fj", TestRun.Count);
        run.Run("run", path, "--machine", "unit", "--steps");
        string steal = run.Output.Split('\n').First(line => line.Contains(" steals ", StringComparison.Ordinal)
            || line.Contains(" takes count(0, 100)", StringComparison.Ordinal));
        string step = steal.Split(' ', StringSplitOptions.RemoveEmptyEntries)[0];

        run.Run("draw", path, "--machine", "unit", "--out", "-");
        string byDefault = run.Output;
        run.Run("draw", path, "--machine", "unit", "--out", "-", "--moment", "first steal");
        string byName = run.Output;
        run.Run("draw", path, "--machine", "unit", "--out", "-", "--step", step);

        Assert.Equal(byDefault, byName);
        Assert.Equal(byName, run.Output);
        Assert.Contains("count(0, 100)", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--moment", "teatime")]
    [InlineData("--moment", "step 999999")]
    [InlineData("--step", "999999")]
    public void Draw_NoSuchMoment_IsExitCode2(string option, string value)
    {
        using var run = new TestRun();

        Assert.Equal(2, run.Run("draw", run.Put("count.fj", TestRun.Count), option, value, "--out", "-"));

        Assert.StartsWith("rookery: error ", run.Errors, StringComparison.Ordinal);
        Assert.Empty(run.Output);
    }

    [Fact]
    public void Draw_Png_HasTheAskedSizeTimesTheScale()
    {
        using var run = new TestRun();
        string path = run.Put("count.fj", TestRun.Count);

        Assert.Equal(0, run.Run("draw", path, "--out", run.PathOf("a.png"), "--size", "800x600", "--scale", "1.5"));

        using SKBitmap picture = SKBitmap.Decode(run.PathOf("a.png"));
        Assert.Equal((1200, 900), (picture.Width, picture.Height));
    }

    [Fact]
    public void Draw_Trace_IsTheSameAsDrawingItsProgram()
    {
        using var run = new TestRun();
        string path = run.Put("count.fj", TestRun.Count);
        run.Run("run", path, "--machine", "unit", "--trace", run.PathOf("run.csv"));

        run.Run("draw", path, "--machine", "unit", "--view", "tree", "--out", "-");
        string fromProgram = run.Output;
        Assert.Equal(0, run.Run("draw", run.PathOf("run.csv"), "--view", "tree", "--out", "-"));

        Assert.Equal(fromProgram, run.Output);
    }

    [Fact]
    public void Draw_TraceWithRunOptionsOrACurve_IsRefused()
    {
        using var run = new TestRun();
        string trace = run.PathOf("run.csv");
        run.Run("run", run.Put("count.fj", TestRun.Count), "--trace", trace);

        Assert.Equal(2, run.Run("draw", trace, "--workers", "8"));
        Assert.Contains("--workers is for programs", run.Errors, StringComparison.Ordinal);
        Assert.Equal(2, run.Run("draw", trace, "--view", "speed-up"));
        Assert.Contains("speed-up curve needs many", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void RunFigures_Folder_HasEachFigureInEachFormatAndNothingElse()
    {
        using var run = new TestRun();
        string folder = run.PathOf("slides");

        Assert.Equal(0, run.Run(
            "run", run.Put("count.fj", TestRun.Count), "--machine", "unit", "--figures", folder, "--scale", "0.5"));

        string[] expected =
        [
            .. from view in (string[])["deques", "speed-up", "steals", "stolen-work", "timeline", "tree"]
               from ending in (string[])[".pdf", ".png", ".svg"]
               select view + ending,
        ];
        Assert.Equal(expected, Directory.EnumerateFiles(folder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.All(
            Directory.EnumerateFiles(folder), file => Assert.InRange(new FileInfo(file).Length, 1_000, 4_000_000));
    }

    [Fact]
    public void Demo_NothingAsked_TellsDrawsAndSaysWhatToTryNext()
    {
        using var run = new TestRun();
        run.Put(Path.Combine("seabird", "count-uneven.fj"), TestRun.Count);

        Assert.Equal(0, run.Run("demo", "--out", run.PathOf("out")));

        Assert.Contains("Four workers ran count-uneven.fj", run.Output, StringComparison.Ordinal);
        Assert.Contains("Try next:", run.Output, StringComparison.Ordinal);
        Assert.True(File.Exists(run.PathOf(Path.Combine("out", "timeline.png"))));
    }

    private static IEnumerable<string> KeysOf(JsonElement element) => element.EnumerateObject().Select(one => one.Name);
}
