namespace Rookery.Tests.CommandLine;

/// <summary>Requests that make no sense: exit code 2, one message on standard error, no output.</summary>
public sealed class UsageTests
{
    [Theory]
    [InlineData("There is no command 'rnu'.", "Did you mean run?", "rnu", "x.fj")]
    [InlineData("'run' has no option '--wrkers'.", "Did you mean --workers?", "run", "x.fj", "--wrkers", "3")]
    [InlineData("'audit' has no option '--workers'.", "", "audit", "x.csv", "--workers", "3")]
    [InlineData("'run' needs FILE.", "", "run")]
    [InlineData("'run' takes one file, and 'y.fj' is one too many.", "", "run", "x.fj", "y.fj")]
    [InlineData("The option --seed needs a value: --seed NUMBER.", "", "run", "x.fj", "--seed")]
    [InlineData("--seed is given more than once.", "", "run", "x.fj", "--seed", "1", "--seed", "2")]
    [InlineData("--workers cannot be 'many'.", "whole number from 1 to 1048576", "run", "x.fj", "--workers", "many")]
    [InlineData("--workers cannot be '0'.", "whole number from 1 to 1048576", "run", "x.fj", "--workers", "0")]
    [InlineData(
        "--scheduler cannot be 'work-steeling'.", "Did you mean work-stealing?",
        "run", "x.fj", "--scheduler", "work-steeling")]
    [InlineData("--victim cannot be 'weakest'.", "lowest", "run", "x.fj", "--victim", "weakest")]
    [InlineData(
        "--machine cannot be 'cray'.", "It is one of ideal, unit, typical, this-computer.",
        "run", "x.fj", "--machine", "cray")]
    [InlineData("--set cannot be 'grain'.", "Write a name and a whole number", "run", "x.fj", "--set", "grain")]
    [InlineData("--set grain is given more than once.", "", "run", "x.fj", "--set", "grain=1", "--set", "grain=2")]
    [InlineData("There is no machine cost 'stael'.", "Costs are fork", "run", "x.fj", "--cost", "stael=5")]
    [InlineData("The machine's probe cannot be 0.", "Use 1 or more", "run", "x.fj", "--cost", "probe=0")]
    [InlineData(
        "With queues shared no worker has a deque", "",
        "run", "x.fj", "--scheduler", "shared-queue", "--victim", "lowest")]
    [InlineData("--steps cannot be '9..3'.", "--steps 20..40", "run", "x.fj", "--steps", "9..3")]
    [InlineData("--json and --steps exclude one another", "", "run", "x.fj", "--json", "--steps")]
    [InlineData(
        "A trace cannot be 'run.txt'.", "Its name ends in .parquet or .csv.",
        "run", "x.fj", "--trace", "run.txt")]
    [InlineData("--view cannot be 'timelime'.", "Did you mean timeline?", "draw", "x.fj", "--view", "timelime")]
    [InlineData(
        "A figure cannot be 'a.gif'.", "Its name ends in .svg or .png or .pdf.",
        "draw", "x.fj", "--out", "a.gif")]
    [InlineData("--size cannot be '5x5'.", "such as 1600x900", "draw", "x.fj", "--size", "5x5")]
    [InlineData("--scale cannot be 'huge'.", "", "draw", "x.fj", "--scale", "huge")]
    [InlineData("--step and --moment exclude one another", "", "draw", "x.fj", "--step", "1", "--moment", "end")]
    [InlineData("A trace cannot be 'x.json'.", "", "audit", "x.json")]
    public void Run_BadRequest_IsOneMessageAndExitCode2(string what, string hint, params string[] words)
    {
        using var run = new TestRun();

        int code = run.Run(words);

        Assert.Equal(2, code);
        Assert.Contains(what, run.Errors, StringComparison.Ordinal);
        Assert.Contains(hint, run.Errors, StringComparison.Ordinal);
        Assert.StartsWith("rookery: error ", run.Errors, StringComparison.Ordinal);
        Assert.Single(run.Errors.Split("error "), part => part.Contains(what, StringComparison.Ordinal));
        Assert.InRange(run.Errors.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length, 1, 2);
        Assert.Empty(run.Output);
    }

    [Fact]
    public void Run_FileThatIsNearlyThere_NamesTheOneThatIs()
    {
        using var run = new TestRun();
        run.Put("count.fj", TestRun.Count);

        Assert.Equal(2, run.Run("run", run.PathOf("cuont.fj")));

        Assert.Contains("Did you mean", run.Errors, StringComparison.Ordinal);
        Assert.Contains("count.fj?", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_ProgramWithoutACommand_SaysWhichCommandWasMeant()
    {
        using var run = new TestRun();
        string path = run.Put("count.fj", TestRun.Count);

        Assert.Equal(2, run.Run(path));

        Assert.Contains($"Did you mean run {path}?", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_Folder_IsRefused()
    {
        using var run = new TestRun();

        Assert.Equal(2, run.Run("run", run.Folder));

        Assert.Contains("is a folder", run.Errors, StringComparison.Ordinal);
    }
}
