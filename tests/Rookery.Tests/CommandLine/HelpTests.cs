using Rookery.CommandLine;
using Rookery.Commands;

namespace Rookery.Tests.CommandLine;

public sealed class HelpTests
{
    [Theory]
    [InlineData("--help")]
    [InlineData("-h")]
    [InlineData("help")]
    public void Help_Main_ListsEveryCommandAndExamples(string word)
    {
        using var run = new TestRun();

        Assert.Equal(0, run.Run(word));

        string[] commands = ["serve [PATH]", "publish PATH", "demo", "run FILE", "analyse FILE", "draw FILE|TRACE",
            "audit TRACE", "Examples:"];
        foreach (string expected in commands)
            Assert.Contains(expected, run.Output, StringComparison.Ordinal);
        Assert.Empty(run.Errors);
    }

    [Theory]
    [InlineData("run", "--help")]
    [InlineData("help", "run")]
    [InlineData("run", "x.fj", "--workers", "2", "-h")]
    public void Help_OfRun_NamesEveryOptionOfTheScheduler(params string[] words)
    {
        using var run = new TestRun();

        Assert.Equal(0, run.Run(words));

        foreach (string option in Simulation.Scheduler.OptionNames)
            Assert.Contains($"--{option} ", run.Output, StringComparison.Ordinal);
        Assert.Contains("--limit-tasks", run.Output, StringComparison.Ordinal);
        Assert.Contains("random|round-robin", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Help_LinesOfText_FitAWideTerminal()
    {
        using var run = new TestRun();
        foreach (string verb in (string[])["run", "analyse", "draw", "audit", "demo", "publish", "serve"])
        {
            run.Run(verb, "--help");
            Assert.DoesNotContain(run.Output.Split('\n'), line => line.Length > 100);
        }
    }

    [Fact]
    public void Help_Examples_AreAcceptedByTheParser()
    {
        // Each example names a file that is not here: the answer must be that, not a complaint about the words.
        using var run = new TestRun();
        Verb[] verbs = [
            new RunVerb(), new AnalyseVerb(), new CompareVerb(), new DrawVerb(), new AuditVerb(), new CheckVerb(),
            new MeasureVerb(), new PredictVerb(),
        ];
        foreach (Verb verb in verbs)
        {
            foreach ((string line, _) in verb.Examples)
            {
                Assert.Equal(2, run.Run(WordsOf(line)));
                Assert.Contains("There is no file", run.Errors, StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public void Version_IsThatOfTheProgram()
    {
        using var run = new TestRun();

        Assert.Equal(0, run.Run("--version"));

        Assert.Matches(@"^rookery \d+\.\d+\.\d+\n$", run.Output);
    }

    private static string[] WordsOf(string line) =>
        [
            .. line.Split('"').SelectMany((part, i) =>
                i % 2 == 1 ? [part] : part.Split(' ', StringSplitOptions.RemoveEmptyEntries)),
        ];
}
