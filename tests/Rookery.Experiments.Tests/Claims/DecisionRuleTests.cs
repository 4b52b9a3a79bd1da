using Rookery.Experiments.Claims;
using Rookery.Notation;

namespace Rookery.Experiments.Tests.Claims;

public sealed class DecisionRuleTests
{
    // The worked example of the documentation first: least 5 %.
    [Theory]
    [InlineData(Direction.Lower, 0.05, 0.06, 0.09, Verdict.Supported)]
    [InlineData(Direction.Lower, 0.05, 0.01, 0.04, Verdict.Refuted)]
    [InlineData(Direction.Lower, 0.05, 0.03, 0.08, Verdict.Undecided)]
    [InlineData(Direction.Higher, 0, 0.01, 0.08, Verdict.Supported)]
    [InlineData(Direction.Higher, 0, -0.01, 0.08, Verdict.Undecided)]
    [InlineData(Direction.Higher, 0, -0.08, -0.01, Verdict.Refuted)]
    [InlineData(Direction.Higher, 0, 0, 0, Verdict.Refuted)]
    [InlineData(Direction.Same, 0.05, -0.04, 0.05, Verdict.Supported)]
    [InlineData(Direction.Same, 0.05, -0.06, 0.01, Verdict.Undecided)]
    [InlineData(Direction.Same, 0.05, 0.06, 0.08, Verdict.Refuted)]
    [InlineData(Direction.Same, 0.05, -0.08, -0.06, Verdict.Refuted)]
    public void Decide_Interval_GivesTheVerdict(
        Direction direction, double least, double low, double high, Verdict expected) =>
        Assert.Equal(expected, new DecisionRule(direction, new(least, true), 0.95).Decide(new(low, high, 0.95)));

    [Theory]
    [InlineData("10%", 0.1, true)]
    [InlineData("2.5 %", 0.025, true)]
    [InlineData("500", 500, false)]
    public void ParseEffect_Written_IsRead(string text, double amount, bool isShare) =>
        Assert.Equal(new EffectSize(amount, isShare), EffectSize.Parse(text));

    [Theory]
    [InlineData("-1")]
    [InlineData("much")]
    [InlineData("")]
    [InlineData("1e400")]
    [InlineData("NaN")]
    public void ParseEffect_Wrong_IsRefused(string text) =>
        Assert.Throws<InputException>(() => EffectSize.Parse(text));

    [Theory]
    [InlineData("49%")]
    [InlineData("100%")]
    [InlineData("x")]
    public void ParseConfidence_OutOfRange_IsRefused(string text) =>
        Assert.Throws<InputException>(() => DecisionRule.ParseConfidence(text));
}
