using Rookery.Testing;

namespace Rookery.Programs.Tests;

public sealed class ProgramGenTests
{
    [Fact]
    public void ProgramGen_ManyPrograms_AreOfManyKinds()
    {
        var programs = ProgramGen.Text.Array[400].Single(_ => true, seed: "0000000000005");
        var runs = programs.Select(text => SerialRun.Of(Fj.Bind(text))).ToList();
        Assert.True(programs.Distinct(StringComparer.Ordinal).Count() > 300);
        Assert.Contains(runs, run => run.Tasks > 200);
        Assert.Contains(runs, run => run.Tasks == 1);
        Assert.Contains(runs, run => run.Work > 4 * run.Span);
        Assert.Contains(runs, run => run.Deepest > 4);
        Assert.All(
            ["block", "fork for", "else if", "pick", " join", "call t"],
            word => Assert.Contains(programs, text => text.Contains(word, StringComparison.Ordinal)));
    }

    [Fact]
    public void SerialRun_AnyProgram_HasSpanAtMostWorkAndWaiting() =>
        ProgramGen.BoundOf(new(WithBlock: false)).Sample(
            program =>
            {
                var run = SerialRun.Of(program);
                return run.Span <= run.Work && run.Forks < run.Tasks && run.Deepest <= run.Tasks;
            },
            iter: 300);
}
