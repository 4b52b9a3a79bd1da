using System.Collections.Immutable;
using Rookery.Figures;
using Rookery.Notation;
using Rookery.Traces;

namespace Rookery.Tests.Figures;

public sealed class MomentFinderTests
{
    [Theory]
    [InlineData("start", 0)]
    [InlineData("end", 7)]
    [InlineData("step 3", 3)]
    [InlineData("step 0", 0)]
    [InlineData("time 5", 4)]
    [InlineData("time 0", 2)]
    [InlineData("line 9", 3)]
    [InlineData("first steal", 4)]
    [InlineData("steal", 4)]
    [InlineData("last steal", 6)]
    [InlineData("Last  STEALS", 6)]
    [InlineData("worker 1 steals", 4)]
    [InlineData("worker 2 steals", 6)]
    [InlineData("worker 1 sleeps", 7)]
    [InlineData("lost race", 5)]
    [InlineData("first lost-race", 5)]
    public void Find_Words_IsTheStateJustAfterThatEvent(string text, int expected) =>
        Assert.Equal(expected, MomentFinder.Find(Sample(), text));

    [Theory]
    [InlineData("")]
    [InlineData("first")]
    [InlineData("teatime")]
    [InlineData("step two")]
    [InlineData("worker 1")]
    [InlineData("step 8")]
    [InlineData("wake")]
    [InlineData("worker 9 sleeps")]
    [InlineData("line 99")]
    public void Find_NoMoment_IsRefused(string text) =>
        Assert.Throws<InputException>(() => MomentFinder.Find(Sample(), text));

    [Fact]
    public void TellingStep_WithAndWithoutSteals_IsTheFirstStealOrTheMiddle()
    {
        var quiet = new TraceRecorder();
        quiet.Add(new TraceEvent(0, EventKind.Begin, 0, 0, -1, 1));
        quiet.Add(new TraceEvent(0, EventKind.Work, 0, 0, -1, 1));
        quiet.Add(new TraceEvent(4, EventKind.End, 0, 0, -1, 1));

        Assert.Equal(4, MomentFinder.TellingStep(Sample()));
        Assert.Equal(2, MomentFinder.TellingStep(quiet.Build(new TraceInputs(), TextLabels.None)));
    }

    private static Trace Sample()
    {
        var recorder = new TraceRecorder();
        ImmutableArray<TraceEvent> events =
        [
            new(0, EventKind.Begin, 0, 0, -1, 1),
            new(0, EventKind.Fork, 0, 0, 1, 2),
            new(3, EventKind.Work, 0, 0, -1, 9),
            new(5, EventKind.Steal, 1, 1, 0, 0),
            new(6, EventKind.LostRace, 2, 1, 0, 0),
            new(7, EventKind.Steal, 2, 1, 0, 0),
            new(9, EventKind.Sleep, 1, -1, -1, 0),
        ];
        foreach (TraceEvent item in events)
            recorder.Add(item);
        return recorder.Build(new TraceInputs { Workers = 3 }, TextLabels.None);
    }
}
