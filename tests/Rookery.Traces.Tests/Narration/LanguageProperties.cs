using System.Text.RegularExpressions;
using Rookery.Traces.Narration;
using Rookery.Traces.Replaying;
using Rookery.Traces.Tests.Replaying;

namespace Rookery.Traces.Tests.Narration;

/// <summary>A translation says what English says: the same numbers, for any facts at all.</summary>
public sealed partial class LanguageProperties
{
    private static readonly Sentences English = new Sentences();
    private static readonly GermanSentences German = new GermanSentences();

    [Fact]
    public void German_OfSimulatedRuns_HasTheNumbersOfEnglish() =>
        SimulatedTraces.All.Sample(AssertSame, iter: 100);

    [Fact]
    public void German_OfOddTraces_HasTheNumbersOfEnglish() => OddTraces.All.Sample(AssertSame, iter: 300);

    [Fact]
    public void German_OfAnyFacts_HasTheNumbersOfEnglish() => EventFactsGen.All.Sample(
        facts =>
        {
            string told = German.Sentence(facts);
            Assert.Equal(LanguageNumbers.Of(English.Sentence(facts)), LanguageNumbers.Of(told));
            AssertWhole(told);
            Assert.Equal(LanguageNumbers.Of(English.Title(facts)), LanguageNumbers.Of(German.Title(facts)));
        },
        iter: 20_000);

    [Fact]
    public void German_OfALawfulRun_NamesEveryTask() => SimulatedTraces.All.Sample(
        trace =>
        {
            var narrator = new Narrator(new Replay(trace), NarrationLanguage.German);
            for (int step = 0; step < Math.Min(trace.Count, 300); step++)
            {
                string told = narrator.Sentence(step);
                if (trace[step].Task >= 0)
                    Assert.Contains(trace.Labels.LabelOf(trace[step].Task), told, StringComparison.Ordinal);
                Assert.DoesNotContain("ohne N", told, StringComparison.Ordinal);
            }
        },
        iter: 50);

    private static void AssertSame(Trace trace)
    {
        var replay = new Replay(trace);
        var english = new Narrator(replay);
        var german = new Narrator(replay, NarrationLanguage.German);
        for (int step = 0; step < Math.Min(trace.Count, 300); step++)
        {
            string told = german.Sentence(step);
            AssertWhole(told);
            Assert.Equal(LanguageNumbers.Of(english.Sentence(step)), LanguageNumbers.Of(told));
            Assert.Equal(LanguageNumbers.Of(english.Title(step)), LanguageNumbers.Of(german.Title(step)));
            if (step % 16 != 0)
                continue;
            string described = german.Describe(replay.At(step));
            Assert.DoesNotMatch(EnglishWords(), described);
            Assert.DoesNotMatch(Slips(), described);
            Assert.Equal(LanguageNumbers.Of(english.Describe(replay.At(step))), LanguageNumbers.Of(described));
        }
    }

    private static void AssertWhole(string told)
    {
        Assert.Matches(WholeSentences(), told);
        Assert.DoesNotMatch(Slips(), told);
        Assert.DoesNotMatch(EnglishWords(), told);
        Assert.True(told.Length <= 450, told);
    }

    [GeneratedRegex(@"^\S.*\.$")]
    private static partial Regex WholeSentences();

    // Doubled blanks or stops, a blank before a stop, numbers of nobody, and names that are missing.
    [GeneratedRegex(@"  |\.\.| [.,:;]|Worker -|task -|\bvon (ist|und|endet)\b|\(\)|, ,|: \.|Zeile 0\b")]
    private static partial Regex Slips();

    [GeneratedRegex(@"\b(the|of|and|its|worker|deque|queue|line|units?|steals?|takes?|which|has|does not)\b")]
    private static partial Regex EnglishWords();
}
