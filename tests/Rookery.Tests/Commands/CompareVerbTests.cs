using System.Diagnostics;
using System.Text.Json;
using Rookery.Experiments.Files;
using Rookery.Sweeps;

namespace Rookery.Tests.Commands;

public sealed class CompareVerbTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public void Compare_TwoFactors_HasARowForEachCombination()
    {
        using var run = new TestRun();
        int code = run.Run(
            "compare", run.Put("count.fj", TestRun.Count), "--vary", "workers=1,2,4", "--vary", "victim=random,lowest",
            "--seeds", "3");
        Assert.Equal(0, code);
        Assert.StartsWith("count.fj ran 18 times: 6 combinations, 3 seeds each.", run.Output, StringComparison.Ordinal);
        Assert.Equal(2, run.Output.Split('\n').Count(l => l.StartsWith("4  ", StringComparison.Ordinal)));
        Assert.Empty(run.Errors);
    }

    [Fact]
    public void CompareJson_OneIdealWorker_TakesTheWork()
    {
        using var run = new TestRun();
        Assert.Equal(
            0, run.Run("compare", run.Put("count.fj", TestRun.Count), "--vary", "workers=1,2", "--seeds", "2",
            "--json"));
        using var json = JsonDocument.Parse(run.Output);
        JsonElement one = json.RootElement.GetProperty("treatments")[0];
        Assert.Equal("1", one.GetProperty("workers").GetString());
        Assert.Equal(262, one.GetProperty("mean").GetDouble());
        Assert.Equal([262, 262], one.GetProperty("interval").EnumerateArray().Select(e => e.GetDouble()));
    }

    [Theory]
    [InlineData("lower", 0, "supported")]
    [InlineData("higher", 1, "refuted")]
    public void CompareClaim_FewerWorkersAndMore_IsDecidedAndSetsTheExitCode(string claim, int code, string verdict)
    {
        using var run = new TestRun();
        Assert.Equal(
            code,
            run.Run(
                "compare", run.Put("count.fj", TestRun.Count), "--vary", "workers=1,4", "--seeds", "5", "--claim",
                claim,
                "--least", "50%"));
        Assert.Contains($"is {verdict}.", run.Output.ReplaceLineEndings(" "), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("results.csv", "1")]
    [InlineData("results.csv", "3")]
    public void CompareData_AnyNumberOfThreads_GivesTheSameBytes(string file, string threads)
    {
        using var run = new TestRun();
        string program = run.Put("count.fj", TestRun.Count);
        string[] words = ["compare", program, "--vary", "workers=2..5", "--seeds", "4", "--data"];
        Assert.Equal(0, run.Run([.. words, run.PathOf("plain.csv"), "--threads", "1"]));
        Assert.Equal(0, run.Run([.. words, run.PathOf(file), "--threads", threads]));
        Assert.Equal(File.ReadAllBytes(run.PathOf("plain.csv")), File.ReadAllBytes(run.PathOf(file)));
        Assert.Equal(run.Files().Distinct().Count(), run.Files().Length);
        Assert.DoesNotContain(run.Files(), name => name.EndsWith(".part", StringComparison.Ordinal));
    }

    // A real process, killed after another number of cells each time: the file is not there, or whole, and the next
    // attempt goes on from what is left to the same bytes.
    [Fact]
    public async Task CompareData_KilledAtAnyTime_IsNeverHalfAndGoesOn()
    {
        using var run = new TestRun();
        string program = run.Put("count.fj", TestRun.Count), target = run.PathOf("r.csv");
        string[] words = ["compare", program, "--vary", "workers=2..9", "--seeds", "200", "--data"];
        Assert.Equal(0, run.Run([.. words, run.PathOf("whole.csv")]));
        byte[] whole = await File.ReadAllBytesAsync(run.PathOf("whole.csv"), Stop);
        string journal = SweepFile.JournalOf(target);
        foreach (long most in (long[])[0, 1, 20_000, 100_000, 200_000])
        {
            using Process process = PublishTests.Start(run, [.. words, target]);
            while (!process.HasExited && !(File.Exists(journal) && new FileInfo(journal).Length >= most))
                await Task.Yield();
            process.Kill();
            await process.WaitForExitAsync(Stop);

            if (File.Exists(target))
                Assert.Equal(whole, await File.ReadAllBytesAsync(target, Stop));
        }

        Assert.Equal(0, run.Run([.. words, target]));
        Assert.Equal(whole, await File.ReadAllBytesAsync(target, Stop));
        Assert.False(File.Exists(journal));
    }

    [Fact]
    public void CompareData_StoppedBefore_GoesOnFromTheJournal()
    {
        using var run = new TestRun();
        string program = run.Put("count.fj", TestRun.Count);
        string[] words = ["compare", program, "--vary", "workers=2..5", "--seeds", "4", "--data", run.PathOf("r.csv")];
        Assert.Equal(0, run.Run(words));
        byte[] whole = File.ReadAllBytes(run.PathOf("r.csv"));

        // A journal as a stopped attempt leaves it: some cells, the last line cut off. A changed number in a kept cell
        // shows in the result, so the cell was taken from the journal and not computed again.
        var sweep = Journals.SweepOf(program, "workers=2..5", 4);
        string[] kept =
        [
            SweepJournal.HeadingOf(sweep), .. Enumerable.Range(0, 6).Select(c => SweepJournal.LineOf(sweep.Run(c))),
            SweepJournal.LineOf(sweep.Run(6))[..20],
        ];
        File.WriteAllText(run.PathOf("r.csv.part"), string.Join('\n', kept));
        Assert.Equal(0, run.Run(words));
        Assert.Equal(whole, File.ReadAllBytes(run.PathOf("r.csv")));

        string work = "262/1";
        kept[1] = kept[1].Replace(work, "999999/1", StringComparison.Ordinal);
        File.WriteAllText(run.PathOf("r.csv.part"), string.Join('\n', kept));
        Assert.Equal(0, run.Run(words));
        Assert.Contains("999999", File.ReadAllText(run.PathOf("r.csv")), StringComparison.Ordinal);
    }

    [Fact]
    public void CompareData_Interrupted_KeepsTheJournalAndTheOldFile()
    {
        using var run = new TestRun();
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        File.WriteAllText(run.PathOf("r.csv"), "old");
        Assert.Equal(
            130,
            run.Run(
                stop.Token, "compare", run.Put("count.fj", TestRun.Count), "--vary", "workers=2..5", "--data",
                run.PathOf("r.csv")));
        Assert.Equal("old", File.ReadAllText(run.PathOf("r.csv")));
        Assert.Contains("goes on from there", run.Errors, StringComparison.Ordinal);
        Assert.Contains("r.csv.part", run.Files());
    }

    [Fact]
    public void CompareData_JournalOfOtherInputs_IsRefusedAndKept()
    {
        using var run = new TestRun();
        File.WriteAllText(run.PathOf("r.csv.part"), "rookery-sweep 00\n");
        Assert.Equal(
            2,
            run.Run(
                "compare", run.Put("count.fj", TestRun.Count), "--vary", "workers=2..5", "--data",
                run.PathOf("r.csv")));
        Assert.Contains("r.csv.part", run.Errors, StringComparison.Ordinal);
        Assert.Equal("rookery-sweep 00\n", File.ReadAllText(run.PathOf("r.csv.part")));
    }

    [Theory]
    [InlineData("--seeds 3", "Nothing varies")]
    [InlineData("--vary workers=1,2 --vary amount=one,half --vary wake=one,all", "More than two")]
    [InlineData("--vary worker=1,2", "workers")]
    [InlineData("--vary workers=1,2 --measure steels", "steals")]
    [InlineData("--vary workers=1,2,3 --claim lower", "two combinations")]
    [InlineData("--vary workers=1,2 --claim same", "--least")]
    [InlineData("--vary workers=1,2 --least 5%", "--claim")]
    [InlineData("--vary grain=0,5", "grain")]
    [InlineData("--vary workers=1,2 --data r.txt", ".parquet")]
    [InlineData("--vary workers=1,2 --confidence 100%", "99.9")]
    [InlineData("--vary workers=1,2 --seeds 0", "--seeds")]
    public void Compare_WrongRequest_SaysWhatToDo(string options, string expected)
    {
        using var run = new TestRun();
        string[] words = ["compare", run.Put("count.fj", TestRun.Count), .. options.Split(' ')];
        Assert.Equal(2, run.Run(words));
        Assert.Contains(expected, run.Errors, StringComparison.Ordinal);
        Assert.Empty(run.Output);
    }

    [Theory]
    [InlineData("figure.svg", "<svg")]
    public void CompareFigure_Svg_ShowsEveryRun(string file, string start)
    {
        using var run = new TestRun();
        Assert.Equal(
            0,
            run.Run(
                "compare", run.Put("count.fj", TestRun.Count), "--vary", "workers=2,4", "--seeds", "10", "--figure",
                run.PathOf(file)));
        string svg = File.ReadAllText(run.PathOf(file));
        Assert.Contains(start, svg, StringComparison.Ordinal);
        Assert.Equal(20, svg.Split("<circle").Length - 1);
    }
}
