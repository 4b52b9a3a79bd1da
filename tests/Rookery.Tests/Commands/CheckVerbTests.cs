using System.Text.Json;

namespace Rookery.Tests.Commands;

public sealed class CheckVerbTests
{
    private const string Buffering = """
        shared x = 0
        shared y = 0
        operation left()
            x = 1
            let a = y
            return a
        operation right()
            y = 1
            let b = x
            return b
        scenario "litmus"
            thread left: left()
            thread right: right()
        exists left.a = 0 and right.b = 0
        """;

    private const string Lost = """
        shared slot
        operation put(x)
            slot = x
        operation take()
            let x = swap(slot, 0)
            if x == 0
                return empty
            return x
        drain take()
        expect once
        scenario "one"
            thread a: put(1)
        scenario "two"
            thread a: put(1), put(2)
        """;

    [Fact]
    public void Check_LitmusUnderTwoModels_TellsTheExecutionThatShowsIt()
    {
        using var run = new TestRun();
        int code = run.Run("check", run.Put("sb.dq", Buffering), "--memory", "sc,tso", "--list-outcomes");
        Assert.Equal(0, code);
        Assert.Contains("under sc: can never end as asked (forbidden)", run.Output, StringComparison.Ordinal);
        Assert.Contains("under tso: can end as asked (allowed)", run.Output, StringComparison.Ordinal);
        Assert.Contains("left begins left() and puts x = 1 into its buffer.", run.Output, StringComparison.Ordinal);
        Assert.Contains("left: left() = 0, right: right() = 0", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_BrokenScenario_AnswersNo()
    {
        using var run = new TestRun();
        string path = run.Put("slot.dq", Lost);
        Assert.Equal(0, run.Run("check", path, "--scenario", "one"));
        Assert.Equal(1, run.Run("check", path));
        Assert.Contains("\"two\", under sc: is broken: something is lost.", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_OneAnswerAsJson_IsTheObjectOfTheDocs()
    {
        using var run = new TestRun();
        Assert.Equal(1, run.Run("check", run.Put("slot.dq", Lost), "--scenario", "two", "--json"));
        using var json = JsonDocument.Parse(run.Output);
        Assert.Equal(
            [
                "algorithm", "scenario", "memory", "verdict", "states", "transitions", "outcomes", "seconds", "witness",
                "progress", "property", "why",
            ],
            json.RootElement.EnumerateObject().Select(one => one.Name));
        Assert.Equal("broken", json.RootElement.GetProperty("verdict").GetString());
        Assert.Equal("lost", json.RootElement.GetProperty("property").GetString());
        Assert.Equal(2, json.RootElement.GetProperty("witness").GetArrayLength());
        Assert.Equal("wait-free", json.RootElement.GetProperty("progress").GetProperty("put").GetString());
    }

    [Fact]
    public void Check_SeveralAnswersAsJson_IsAListWithFiles()
    {
        using var run = new TestRun();
        string slot = run.Put("slot.dq", Lost), buffering = run.Put("sb.dq", Buffering);
        Assert.Equal(1, run.Run("check", slot, buffering, "--json", "--memory", "sc,pso,ra"));
        using var json = JsonDocument.Parse(run.Output);
        Assert.Equal(9, json.RootElement.GetArrayLength());
        Assert.Equal("file", json.RootElement[0].EnumerateObject().First().Name);
        Assert.Equal(
            ["forbidden", "allowed", "allowed"],
            json.RootElement.EnumerateArray().Skip(6).Select(one => one.GetProperty("verdict").GetString()));
    }

    [Fact]
    public void Check_TooSmallALimit_IsALimitReached()
    {
        using var run = new TestRun();
        Assert.Equal(3, run.Run("check", run.Put("sb.dq", Buffering), "--limit-states", "2"));
        Assert.Contains("--limit-states", run.Output, StringComparison.Ordinal);
        Assert.Contains("Shrink the scenario", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_Figures_AreWrittenForWhatShowsSomething()
    {
        using var run = new TestRun();
        string path = run.Put("sb.dq", Buffering);
        Assert.Equal(0, run.Run("check", path, "--memory", "sc,tso", "--figures", run.PathOf("figures")));
        Assert.Equal(
            ["sb-litmus-tso.pdf", "sb-litmus-tso.png", "sb-litmus-tso.svg"],
            Directory.EnumerateFiles(run.PathOf("figures")).Select(file => Path.GetFileName(file)!).Order());
        Assert.Equal(0, run.Run("check", path, "--memory", "tso", "--out", "-"));
        Assert.StartsWith("<svg", run.Output, StringComparison.Ordinal);
        Assert.Equal(2, run.Run("check", path, "--out", run.PathOf("none.svg")));
    }

    [Fact]
    public void Check_ReductionsByName_AreTakenAlone()
    {
        using var run = new TestRun();
        string path = run.Put("sb.dq", Buffering);
        int StatesWith(string reductions)
        {
            run.Run("check", path, "--memory", "tso", "--json", "--reduce", reductions);
            using var found = System.Text.Json.JsonDocument.Parse(run.Output);
            return found.RootElement.GetProperty("states").GetInt32();
        }

        int off = StatesWith("off");
        Assert.True(StatesWith("local") < off);
        Assert.Equal(off, StatesWith("names,symmetry,silent"));
        Assert.Equal(StatesWith("local"), StatesWith("names, local"));
        Assert.Equal(StatesWith("all"), StatesWith("on"));
    }

    [Theory]
    [InlineData("'check' needs FILE...")]
    [InlineData("--memory cannot be 'tos'.", "x", "--memory", "sc,tos")]
    [InlineData("--reduce cannot be 'no'.", "x", "--reduce", "no")]
    [InlineData("--reduce cannot be 'off'.", "x", "--reduce", "names,off")]
    [InlineData("has no scenario 'litmos'.", "x", "--scenario", "litmos")]
    [InlineData("--json and --out - exclude one another", "x", "--json", "--out", "-")]
    public void Check_RequestThatMakesNoSense_IsRefused(string message, params string[] words)
    {
        using var run = new TestRun();
        string path = run.Put("sb.dq", Buffering);
        Assert.Equal(2, run.Run(["check", .. words.Select(word => word == "x" ? path : word)]));
        Assert.Contains(message, run.Errors, StringComparison.Ordinal);
        Assert.Empty(run.Output);
    }

    [Fact]
    public void Check_WrongFile_ShowsTheLines()
    {
        using var run = new TestRun();
        string path = run.Put("wrong.dq", Buffering.Replace("let a = y", "let a = z + y", StringComparison.Ordinal));
        Assert.Equal(2, run.Run("check", path));
        Assert.Contains("wrong.dq:5:13: error DQ020: unknown name 'z'", run.Errors, StringComparison.Ordinal);
    }
}
