using System.Text.RegularExpressions;
using Rookery.Traces.Narration;
using Rookery.Traces.Replaying;
using Rookery.Traces.Tests.Replaying;

namespace Rookery.Traces.Tests.Narration;

public sealed partial class NarratorProperties
{
    [Fact]
    public void Sentence_OfEveryEventOfSimulatedRuns_IsWellFormed() =>
        SimulatedTraces.All.Sample(AssertWellTold, iter: 150);

    [Fact]
    public void Sentence_OfOddTraces_IsWellFormed() => OddTraces.All.Sample(AssertWellTold, iter: 400);

    [Fact]
    public void Sentence_OfALawfulRun_NamesEveryTaskAndWorker() =>
        SimulatedTraces.All.Sample(
            trace =>
            {
                var narrator = new Narrator(trace);
                for (int step = 0; step < Math.Min(trace.Count, 300); step++)
                {
                    string told = narrator.Sentence(step);
                    if (trace[step].Task >= 0)
                        Assert.Contains(trace.Labels.LabelOf(trace[step].Task), told, StringComparison.Ordinal);
                    Assert.DoesNotContain("unknown", told, StringComparison.Ordinal);
                    Assert.DoesNotContain("does not name", told, StringComparison.Ordinal);
                }
            },
            iter: 50);

    private static void AssertWellTold(Trace trace)
    {
        var replay = new Replay(trace);
        var narrator = new Narrator(replay);
        for (int step = 0; step < Math.Min(trace.Count, 300); step++)
        {
            string told = narrator.Sentence(step);
            Assert.Matches(WholeSentences(), told);
            Assert.DoesNotMatch(Slips(), told);
            Assert.True(told.Length <= 400, told);
            Assert.DoesNotMatch(Slips(), narrator.Title(step));
            if (step % 16 == 0)
                Assert.DoesNotMatch(Slips(), narrator.Describe(replay.At(step)));
        }
    }

    [GeneratedRegex(@"^\S.*\.$")]
    private static partial Regex WholeSentences();

    // Doubled blanks or stops, a blank before a stop, numbers of nobody, and names that are missing.
    [GeneratedRegex(@"  |\.\.| [.,:;]|worker -|task -|\bof (ends|and|to)\b|\(\)|, ,|: \.|line 0\b")]
    private static partial Regex Slips();
}
