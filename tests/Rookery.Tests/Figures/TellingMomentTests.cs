using Rookery.Figures;
using Rookery.Traces;

namespace Rookery.Tests.Figures;

public sealed class TellingMomentTests
{
    [Fact]
    public void Of_RunWithSteals_IsTheFirst() =>
        Assert.Equal(2, TellingMoment.Of(TraceOf(
            new(0, EventKind.Begin, 0, 0, -1, 1), new(0, EventKind.Fork, 0, 0, 1, 2),
            new(3, EventKind.Steal, 1, 1, 0, 0), new(4, EventKind.Steal, 2, 1, 1, 0))));

    [Fact]
    public void Of_RunWithoutSteals_IsTheMiddle() =>
        Assert.Equal(1, TellingMoment.Of(TraceOf(
            new(0, EventKind.Begin, 0, 0, -1, 1), new(0, EventKind.Work, 0, 0, -1, 1),
            new(4, EventKind.End, 0, 0, -1, 1))));

    [Fact]
    public void Of_RunWithoutEvents_IsBeforeAnything() => Assert.Equal(-1, TellingMoment.Of(TraceOf()));

    private static Trace TraceOf(params TraceEvent[] events)
    {
        var recorder = new TraceRecorder();
        foreach (TraceEvent item in events)
            recorder.Add(item);
        return recorder.Build(new TraceInputs { Workers = 3 }, TextLabels.None);
    }
}
