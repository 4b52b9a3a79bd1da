using System.Text.RegularExpressions;
using Rookery.Experiments.Claims;
using Rookery.Experiments.Statistics;
using Rookery.Experiments.Tests.Claims;
using Rookery.Experiments.Words;

namespace Rookery.Experiments.Tests.Words;

public sealed partial class ClaimWordsTests
{
    [Theory]
    [InlineData(
        Direction.Lower, 0.1,
        "makespan is lower with b than with a by at least 10 %, on 1,000 seeds, with 99.5 % confidence",
        "makespan ist mit b um mindestens 10 % niedriger als mit a, bei 1.000 Startwerten, mit 99,5 % Konfidenz")]
    [InlineData(
        Direction.Higher, 0,
        "makespan is higher with b than with a, on 1,000 seeds, with 99.5 % confidence",
        "makespan ist mit b höher als mit a, bei 1.000 Startwerten, mit 99,5 % Konfidenz")]
    [InlineData(
        Direction.Same, 0.025,
        "makespan is the same with b and with a, up to 2.5 %, on 1,000 seeds, with 99.5 % confidence",
        "makespan ist mit b und mit a gleich, bis auf 2,5 %, bei 1.000 Startwerten, mit 99,5 % Konfidenz")]
    public void Rule_OfEachDirection_IsSaidInBothLanguages(
        Direction direction, double least, string english, string german)
    {
        var rule = new DecisionRule(direction, new(least, true), 0.995);
        Assert.Equal(english, ClaimWords.English.Rule(rule, "a", "b", "makespan", 1_000));
        Assert.Equal(german, ClaimWords.German.Rule(rule, "a", "b", "makespan", 1_000));
    }

    [Fact]
    public void Reason_OfASupportedClaim_HasTheSameNumbersInBothLanguages()
    {
        Claim claim = ClaimTests.Of(
            "thief-takes=oldest", "thief-takes=newest", "steals", new(Direction.Higher, default, 0.95));
        ClaimResult result = ClaimResult.Of(
            claim, new Sample([1000, 1010.5]), new Sample([2000, 2020]), new Sample([1000, 1009.5]),
            new Interval(0.99, 1.01, 0.95));
        Assert.StartsWith(
            "The mean steals is 1,005 with thief-takes=oldest and 2,010 with thief-takes=newest, a difference of "
                + "+1,005 (95 % interval from +944.4 to +1,065), or +100.0 % (+99.0 % to +101.0 %).",
            ClaimWords.English.Reason(result), StringComparison.Ordinal);
        Assert.StartsWith(
            "Im Mittel ist steals 1.005 mit thief-takes=oldest und 2.010 mit thief-takes=newest, ein Unterschied von "
                + "+1.005 (95 %-Intervall von +944,4 bis +1.065), also +100,0 % (+99,0 % bis +101,0 %).",
            ClaimWords.German.Reason(result), StringComparison.Ordinal);
    }

    [Fact]
    public void Reason_OfEveryKind_SpeaksNoEnglishInGerman()
    {
        Claim claim = ClaimTests.Of("workers=2", "workers=8", "work", new(Direction.Same, new(0.01, true), 0.95));
        ClaimResult[] results =
        [
            new() { Claim = claim, Verdict = Verdict.Undecided, Incomparable = new(3, 3, 1_200) },
            new() { Claim = claim, Verdict = Verdict.Undecided, Incomparable = new(0, 2, 40) },
            ClaimResult.Of(claim, new Sample([5, 5]), new Sample([5, 5]), new Sample([0, 0]), new(0, 0, 0.95)),
        ];
        foreach (ClaimResult result in results)
        {
            string german = ClaimWords.German.Reason(result);
            Assert.NotEqual(ClaimWords.English.Reason(result), german);
            Assert.DoesNotMatch(EnglishWords(), german);
        }
    }

    [GeneratedRegex(@"\b(the|of|and|is|with|runs|have|seeds?|from|to|interval|difference)\b")]
    private static partial Regex EnglishWords();
}
