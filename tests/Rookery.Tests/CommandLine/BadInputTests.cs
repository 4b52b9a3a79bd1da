using System.Text.RegularExpressions;

namespace Rookery.Tests.CommandLine;

/// <summary>Inputs of strangers: exit code 2 or 3 at once, a message that says where, no half-written file.</summary>
public sealed class BadInputTests
{
    [Fact]
    public void Run_SeveralErrors_AreAllSaidWithLineAndCaret()
    {
        using var run = new TestRun();
        string path = run.Put("bad.fj", "task main()\n    work nothing\n    fork nobody(1)\nstart main()\n");

        Assert.Equal(2, run.Run("run", path));

        Assert.Contains($"{path}:2:10: error FJ", run.Errors, StringComparison.Ordinal);
        Assert.Contains($"{path}:3:10: error FJ", run.Errors, StringComparison.Ordinal);
        Assert.Contains("    2 |     work nothing\n      |          ^^^^^^^\n", run.Errors, StringComparison.Ordinal);
        Assert.Empty(run.Output);
    }

    [Fact]
    public void Run_NoProgramAtAll_SaysTheFirstErrorsOnly()
    {
        using var run = new TestRun();
        string path = run.Put("noise.fj", string.Concat(Enumerable.Repeat("%% ?? !!\n", 500)));

        Assert.Equal(2, run.Run("run", path));

        Assert.InRange(run.Errors.Split("error ").Length, 2, 21);
    }

    [Theory]
    [InlineData("endless recursion", 3, "task f(n)\n    call f(n + 1)\nstart f(0)")]
    [InlineData("endless forks", 3, "task f(n)\n    fork f(n + 1)\nstart f(0)")]
    [InlineData(
        "astronomic loop", 3,
        "task f()\n    for i in 0..1000000000000000\n        let x = i\n    work 1\nstart f()")]
    [InlineData("overflow", 2, "task f(n)\n    work n * n\nstart f(9000000000000000000)")]
    [InlineData("division by zero", 2, "task f(n)\n    work 1 / n\nstart f(0)")]
    [InlineData("negative work", 2, "task f()\n    work 0 - 5\nstart f()")]
    [InlineData("tab", 2, "task f()\n\twork 1\nstart f()")]
    [InlineData("empty", 2, "")]
    [InlineData("missing data", 2, "data d = \"gone.csv\" column \"x\"\ntask f()\n    work len(d)\nstart f()")]
    [InlineData("data outside", 2, "data d = \"../d.csv\" column \"x\"\ntask f()\n    work len(d)\nstart f()")]
    [InlineData("data at the root", 2, "data d = \"/etc/passwd\" column \"x\"\ntask f()\n    work len(d)\nstart f()")]
    public void RunAndAnalyse_BadProgram_EndsWithItsCodeAndOneError(string what, int code, string text)
    {
        using var run = new TestRun();
        string path = run.Put("bad.fj", text);
        string trace = run.PathOf("run.csv");

        // Fewer steps than by default: the limit is the same, and sooner reached.
        string[] limits = ["--limit-steps", "100000", "--limit-tasks", "100000"];
        int runCode = run.Run(["run", path, "--trace", trace, .. limits]);
        string runErrors = run.Errors;
        int analyseCode = run.Run(["analyse", path, .. limits]);

        Assert.True(runCode == code, $"{what}: run ended with {runCode}: {runErrors}");
        Assert.True(analyseCode == code, $"{what}: analyse ended with {analyseCode}: {run.Errors}");
        Assert.Contains($"{path}", runErrors, StringComparison.Ordinal);
        Assert.Single(Regex.Matches(runErrors, "error [A-Z]{2}[0-9]{3}: "));
        Assert.DoesNotContain("   at ", runErrors, StringComparison.Ordinal);
        Assert.Equal(["bad.fj"], run.Files());
    }

    [Fact]
    public void Run_TwentyThousandParentheses_IsAnErrorAndNoCrash()
    {
        using var run = new TestRun();
        string nested = new string('(', 20_000) + "1" + new string(')', 20_000);

        Assert.InRange(run.Run("run", run.Put("deep.fj", $"task f()\n    work {nested}\nstart f()")), 2, 3);

        Assert.Matches("^[^ ]+deep.fj:2:[0-9]+: error [A-Z]{2}[0-9]{3}: ", run.Errors);
    }

    [Fact]
    public void Run_ProgramLargerThanTheLimit_IsExitCode3()
    {
        using var run = new TestRun();

        Assert.Equal(3, run.Run("run", run.Put("big.fj", new string('#', (4 << 20) + 1))));

        Assert.Contains("larger than 4 MiB", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_DataBehindALink_IsRefused()
    {
        using var run = new TestRun();
        using var other = new TestRun();
        string secret = other.Put("secret.csv", "x\n5\n");
        string path = run.Put("a.fj", "data d = \"d.csv\" column \"x\"\ntask f()\n    work d[0]\nstart f()");
        File.CreateSymbolicLink(run.PathOf("d.csv"), secret);

        Assert.Equal(2, run.Run("run", path));
        Assert.Contains("'d.csv' is a link", run.Errors, StringComparison.Ordinal);

        File.Delete(run.PathOf("d.csv"));
        run.Put("d.csv", "x\n5\n");
        Assert.Equal(0, run.Run("run", path));
    }

    [Fact]
    public void Run_ParameterOutOfRange_NamesTheRange()
    {
        using var run = new TestRun();

        Assert.Equal(2, run.Run("run", run.Put("count.fj", TestRun.Count), "--set", "grain=0"));

        Assert.Contains("grain", run.Errors, StringComparison.Ordinal);
        Assert.Contains("1000", run.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--limit-tasks", "10")]
    [InlineData("--limit-events", "10")]
    [InlineData("--limit-depth", "2")]
    public void Run_LimitReached_IsExitCode3AndNamesTheOption(string option, string most)
    {
        using var run = new TestRun();

        Assert.Equal(3, run.Run("run", run.Put("count.fj", TestRun.Count), option, most));

        Assert.Contains(option, run.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("run.csv", "time,worker\n1,2\n")]
    [InlineData("run.csv", "")]
    [InlineData("run.csv", "time,worker,kind,task,other,line\n0,0,dance,0,-1,0\n")]
    [InlineData("run.parquet", "PAR1 but not really PAR1")]
    public void AuditAndDraw_NoTrace_AreExitCode2(string name, string text)
    {
        using var run = new TestRun();
        string path = run.Put(name, text);

        Assert.Equal(2, run.Run("audit", path));
        Assert.Contains(path, run.Errors, StringComparison.Ordinal);
        Assert.Contains("error TR", run.Errors, StringComparison.Ordinal);
        Assert.Equal(2, run.Run("draw", path, "--out", run.PathOf("a.svg")));
        Assert.Equal([name], run.Files());
    }

    [Fact]
    public void Run_TraceIntoAMissingFolder_IsExitCode2()
    {
        using var run = new TestRun();

        Assert.Equal(2, run.Run(
            "run", run.Put("count.fj", TestRun.Count), "--trace", run.PathOf(Path.Combine("no", "run.csv"))));

        Assert.Contains("does not exist", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_Interrupted_StopsAndLeavesNoFile()
    {
        using var run = new TestRun();
        using var stop = new CancellationTokenSource();
        await stop.CancelAsync();
        string path = run.Put("count.fj", TestRun.Count);

        Assert.Equal(130, run.Run(stop.Token, "run", path, "--trace", run.PathOf("run.csv")));

        Assert.Equal(["count.fj"], run.Files());
    }
}
