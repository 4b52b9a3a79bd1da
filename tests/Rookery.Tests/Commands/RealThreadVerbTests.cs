using System.Text.Json;

namespace Rookery.Tests.Commands;

/// <summary>The commands that take the time: what they take differs, what they say about it does not.</summary>
public sealed class RealThreadVerbTests
{
    [Theory]
    [InlineData("pool")]
    [InlineData("tasks")]
    public void Measure_AsJson_HasEachRunAndTheProgramsWork(string on)
    {
        using var run = new TestRun();
        string path = run.Put("count.fj", TestRun.Count);
        Assert.Equal(0, run.Run("measure", path, "--on", on, "--unit", "100", "--repeats", "3", "--json"));
        using JsonDocument json = JsonDocument.Parse(run.Output);
        Assert.Equal(3, json.RootElement.GetProperty("nanoseconds").GetArrayLength());

        // 200 units in the leaves, and 2 for each of the 31 inner tasks.
        Assert.Equal((200 + (31 * 2)) * 100, json.RootElement.GetProperty("workNanoseconds").GetInt64());
        Assert.True(json.RootElement.GetProperty("minNanoseconds").GetInt64() > 0);
    }

    [Fact]
    public void Measure_WithATrace_WritesOneThatIsLawfulAndCanBeDrawn()
    {
        using var run = new TestRun();
        string path = run.Put("count.fj", TestRun.Count);
        string trace = run.PathOf("real.csv");
        Assert.Equal(0, run.Run("measure", path, "--unit", "100", "--repeats", "1", "--trace", trace));
        Assert.Equal(0, run.Run("audit", trace));
        foreach (string view in new[] { "deques", "timeline", "tree", "stolen-work", "steals" })
            Assert.Equal(0, run.Run("draw", trace, "--view", view, "--out", run.PathOf(view + ".svg")));
    }

    [Theory]
    [InlineData("--fork-runs", "child", "cannot be queued in C#")]
    [InlineData("--at-join", "suspend", "cannot leave its thread")]
    [InlineData("--scheduler", "thread-per-task", "--on tasks")]
    [InlineData("--deque", "none", "lock-free")]
    [InlineData("--on", "moon", "pool")]
    [InlineData("--unit", "0", "whole number")]
    public void Measure_OfWhatCannotBe_SaysWhy(string option, string word, string reason)
    {
        using var run = new TestRun();
        string path = run.Put("count.fj", TestRun.Count);
        Assert.Equal(2, run.Run("measure", path, option, word));
        Assert.Contains(reason, run.Errors, StringComparison.Ordinal);
        Assert.Empty(run.Output);
    }

    [Fact]
    public void Measure_OfMoreThanTheTimeLimit_ReachesALimit()
    {
        using var run = new TestRun();
        string path = run.Put("long.fj", "task t()\n    work 1000000000\nstart t()\n");
        Assert.Equal(3, run.Run("measure", path));
        Assert.Contains("--limit-seconds", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Predict_WithAMachineOfOurOwn_PutsBothSideBySide()
    {
        using var run = new TestRun();
        string path = run.Put("count.fj", TestRun.Count);
        string machine = run.Put("m.json", "{\"costs\": {\"fork\": 5, \"steal\": 2000, \"probe\": 10}}");
        Assert.Equal(0, run.Run(
            "predict", path, "--machine", machine, "--workers", "2", "--unit", "1000", "--repeats", "2", "--json"));
        using JsonDocument json = JsonDocument.Parse(run.Output);
        JsonElement one = json.RootElement.GetProperty("predictions")[0];

        // One worker: the work, and a fork of 5 ns for each of the 31 inner tasks.
        Assert.Equal(((200 + (31 * 2)) * 1000) + (31 * 5), one.GetProperty("simulatedNanoseconds").GetInt64());
        Assert.Equal(2, json.RootElement.GetProperty("predictions").GetArrayLength());

        // The error counts the hand-over, which the simulator does not know.
        double handOver = one.GetProperty("handOverNanoseconds").GetInt64();
        Assert.True(handOver > 0);
        double shortest = one.GetProperty("minNanoseconds").GetInt64();
        double simulated = one.GetProperty("simulatedNanoseconds").GetInt64();
        Assert.Equal(((simulated + handOver) / shortest) - 1, one.GetProperty("error").GetDouble(), 9);
    }

    [Theory]
    [InlineData("m.json", "{}", "no machine")]
    [InlineData("m.txt", "", ".json")]
    public void Predict_WithAMachineThatIsNone_SaysWhatIsWrong(string name, string text, string reason)
    {
        using var run = new TestRun();
        string path = run.Put("count.fj", TestRun.Count);
        Assert.Equal(2, run.Run("predict", path, "--machine", run.Put(name, text)));
        Assert.Contains(reason, run.Errors, StringComparison.Ordinal);
    }
}
