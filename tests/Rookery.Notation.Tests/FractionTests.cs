namespace Rookery.Notation.Tests;

public sealed class FractionTests
{
    [Theory]
    [InlineData(17, 8, "17/8")]
    [InlineData(16, 8, "2")]
    [InlineData(0, 5, "0")]
    [InlineData(6, 4, "3/2")]
    public void Of_TwoNumbers_IsInLowestTerms(long numerator, long denominator, string text) =>
        Assert.Equal(text, Fraction.Of(numerator, denominator).ToString());

    [Fact]
    public void Of_DenominatorZero_IsRefused() => Assert.Throws<ArgumentOutOfRangeException>(() => Fraction.Of(1, 0));
}
