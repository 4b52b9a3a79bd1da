using Rookery.Traces.Replaying;

namespace Rookery.Traces.Tests.Replaying;

public sealed class MomentsTests
{
    private static readonly Trace OneSteal = TraceText.Read(TraceText.OneSteal);

    [Theory]
    [InlineData("start", 0)]
    [InlineData("end", 22)]
    [InlineData("step 7", 7)]
    [InlineData("first steal", 11)]
    [InlineData("last steal", 11)]
    [InlineData("First  STEAL ", 11)]
    [InlineData("last empty", 18)]
    [InlineData("empty 2", 9)]
    [InlineData("time 11", 9)]
    [InlineData("time 13", 12)]
    [InlineData("most queued", 5)]
    [InlineData("line 3", 5)]
    [InlineData("last line 8", 13)]
    [InlineData("worker 1 begins", 12)]
    [InlineData("task 2 ends", 14)]
    [InlineData("last worker 1 probes", 10)]
    [InlineData("first worker 0 join-wait", 15)]
    public void Find_Name_GivesItsStep(string name, int step)
    {
        MomentSteps found = Moments.Find(OneSteal, name);
        Assert.Null(found.Error);
        Assert.Equal([step], found.Steps);
    }

    [Fact]
    public void Find_KindAlone_GivesAll() => Assert.Equal([3, 9, 18], Moments.Find(OneSteal, "empty").Steps);

    [Theory]
    [InlineData("starved")]
    [InlineData("step 23")]
    [InlineData("worker 2 sleeps")]
    [InlineData("steal 2")]
    [InlineData("time 34")]
    [InlineData("line 99")]
    [InlineData("step 99999999999")]
    public void Find_MomentThatTheRunLacks_SaysSo(string name)
    {
        MomentSteps found = Moments.Find(OneSteal, name);
        Assert.Equal("MO002", found.Error?.Code);
        Assert.Equal(-1, found.First);
    }

    [Theory]
    [InlineData("")]
    [InlineData("first")]
    [InlineData("first stole")]
    [InlineData("step")]
    [InlineData("step -1")]
    [InlineData("worker two sleeps")]
    [InlineData("worker 1 worker 2")]
    [InlineData("7")]
    [InlineData("steal probe")]
    [InlineData("first steal 2")]
    public void Find_NameThatSaysNothing_ListsWhatIsUnderstood(string name)
    {
        MomentSteps found = Moments.Find(OneSteal, name);
        Assert.Equal("MO001", found.Error?.Code);
        Assert.Contains("first steal", found.Error!.Hint, StringComparison.Ordinal);
        Assert.Contains("join-wait", found.Error.Hint, StringComparison.Ordinal);
    }

    [Fact]
    public void Find_Understood_AllAreUnderstood() =>
        Assert.All(Moments.Understood, name => Assert.NotEqual("MO001", Moments.Find(OneSteal, name).Error?.Code));

    [Fact]
    public void Find_StarvedRun_IsItsLastEvent()
    {
        Trace starved = OneSteal.WithInputs(OneSteal.Inputs with { Starved = true });
        Assert.Equal([22], Moments.Find(starved, "starved").Steps);
    }

    [Fact]
    public void Find_SeveralTasksInOneSteal_IsOneMoment()
    {
        Trace trace = TraceText.Read("0 0 fork 0 1\n0 0 fork 0 2\n1 1 steal 1 0\n1 1 steal 2 0\n2 1 steal 3 0");
        Assert.Equal([2, 4], Moments.Find(trace, "steal").Steps);
    }

    [Fact]
    public void Find_LongName_IsQuotedInPart() =>
        Assert.True(Moments.Find(OneSteal, new string('x', 5_000)).Error!.What.Length < 200);

    [Fact]
    public void Find_EmptyTrace_HasNoStartAndNoEnd()
    {
        Trace empty = TraceText.Read("");
        Assert.False(Moments.Find(empty, "start").IsFound);
        Assert.False(Moments.Find(empty, "end").IsFound);
    }

    [Fact]
    public void Next_AndPrevious_GoFromProbeToProbe()
    {
        Assert.Equal([2, 4, 10, 16], new[] { 0, 3, 5, 11 }.Select(s => Moments.Next(OneSteal, s, EventKind.Probe)));
        Assert.Equal(-1, Moments.Next(OneSteal, 17, EventKind.Probe));
        Assert.Equal([10, 4, -1], new[] { 16, 10, 2 }.Select(s => Moments.Previous(OneSteal, s, EventKind.Probe)));
    }

    [Fact]
    public void Find_AnyText_NeverThrows() => Gen.String.Sample(name => Moments.Find(OneSteal, name).IsFound
        || Moments.Find(OneSteal, name).Error is not null);
}
