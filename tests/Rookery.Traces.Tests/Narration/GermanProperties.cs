using System.Text.RegularExpressions;
using Rookery.Traces.Narration;
using Rookery.Traces.Replaying;
using Rookery.Traces.Tests.Replaying;

namespace Rookery.Traces.Tests.Narration;

/// <summary>The German catalogue beside the English one: whole sentences, and the same numbers.</summary>
public sealed partial class GermanProperties
{
    [Fact]
    public void Sentence_OfSimulatedRuns_HasTheNumbersOfTheEnglishOne() =>
        SimulatedTraces.All.Sample(trace => AssertAlike(trace, hasSameNumbers: true), iter: 150);

    [Fact]
    public void Sentence_OfOddTraces_IsWellFormed() =>
        OddTraces.All.Sample(trace => AssertAlike(trace, hasSameNumbers: false), iter: 400);

    [Fact]
    public void Sentence_OfALawfulRun_NamesEveryTask() => SimulatedTraces.All.Sample(
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

    private static void AssertAlike(Trace trace, bool hasSameNumbers)
    {
        var replay = new Replay(trace);
        var english = new Narrator(replay);
        var german = new Narrator(replay, NarrationLanguage.German);
        for (int step = 0; step < Math.Min(trace.Count, 300); step++)
        {
            string told = german.Sentence(step);
            Assert.Matches(WholeSentences(), told);
            Assert.DoesNotMatch(Slips(), told);
            Assert.DoesNotMatch(Slips(), german.Title(step));
            Assert.True(told.Length <= 500, told);
            if (step % 16 == 0)
                AssertSameNumbers(english.Describe(replay.At(step)), german.Describe(replay.At(step)), hasSameNumbers);
            AssertSameNumbers(english.Sentence(step), told, hasSameNumbers);
            AssertSameNumbers(english.Title(step), german.Title(step), hasSameNumbers);
        }
    }

    private static void AssertSameNumbers(string english, string german, bool isAsked)
    {
        Assert.NotEmpty(german);
        if (isAsked)
            Assert.True(NumbersOf(english).SetEquals(NumbersOf(german)), $"{english}\n{german}");
    }

    private static SortedSet<string> NumbersOf(string told) =>
        [.. Numbers().Matches(told).Select(match => match.Value.Replace(",", "", StringComparison.Ordinal)
            .Replace(".", "", StringComparison.Ordinal))];

    [GeneratedRegex(@"\d+([.,]\d{3})*(?!\d)")]
    private static partial Regex Numbers();

    [GeneratedRegex(@"^[A-ZÄÖÜa-z].*\.$")]
    private static partial Regex WholeSentences();

    // Doubled blanks or stops, a blank before a stop, numbers of nobody, English left over, and names that are missing.
    [GeneratedRegex(@"  |\.\.| [.,:;]|Worker -|Task -|\bvon (und|,)|\(\)|, ,|: \.|Zeile 0\b|\b(the|and|its|worker)\b")]
    private static partial Regex Slips();
}
