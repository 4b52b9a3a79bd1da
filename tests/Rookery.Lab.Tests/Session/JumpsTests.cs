using Rookery.Lab.Session;
using Rookery.Traces;

namespace Rookery.Lab.Tests.Session;

public sealed class JumpsTests
{
    private static Trace Trace { get; } =
        DemoTrace.Of("fibonacci.fj", "workers=4 machine=unit seed=7").Trace!;

    [Fact]
    public void Next_FromTheStart_VisitsEveryStealAndPreviousAllOfThemBackwards()
    {
        int steals = 0;
        for (int step = 0; step < Trace.Count; step++)
            steals += Trace[step].Kind == EventKind.Steal ? 1 : 0;
        Assert.True(steals > 3);
        var forward = new List<int>();
        for (int? step = Jumps.Next(Trace, 0, EventKind.Steal); step is { } at; step = Jumps.Next(Trace, at,
            EventKind.Steal))
            forward.Add(at);
        Assert.Equal(steals, forward.Count);
        Assert.All(forward, at => Assert.Equal(EventKind.Steal, Trace[at - 1].Kind));
        var backward = new List<int>();
        for (int? step = Jumps.Previous(Trace, Trace.Count + 1,
            EventKind.Steal); step is { } at; step = Jumps.Previous(Trace, at, EventKind.Steal))
            backward.Add(at);
        backward.Reverse();
        Assert.Equal(forward, backward);
    }

    [Fact]
    public void Telling_ThereAndBack_AreTheSameMoments()
    {
        var forward = new List<int>();
        for (int at = Jumps.NextTelling(Trace, 0); at < Trace.Count; at = Jumps.NextTelling(Trace, at))
            forward.Add(at);
        var backward = new List<int>();
        for (int at = Jumps.PreviousTelling(Trace, Trace.Count); at > 0; at = Jumps.PreviousTelling(Trace, at))
            backward.Add(at);
        backward.Reverse();
        Assert.Equal(forward, backward);
    }

    [Fact]
    public void StepAt_AnyTime_CountsTheEventsUpToIt()
    {
        for (long time = -1; time <= Trace.Makespan + 1; time++)
        {
            int plain = 0;
            while (plain < Trace.Count && Trace[plain].Time <= time)
                plain++;
            Assert.Equal(plain, Jumps.StepAt(Trace, time));
        }
    }

    [Fact]
    public void Kinds_HaveKeysOfTheirOwn() =>
        Assert.Equal(Jumps.Kinds.Length, Jumps.Kinds.Select(kind => kind.Key).Distinct().Count());
}
