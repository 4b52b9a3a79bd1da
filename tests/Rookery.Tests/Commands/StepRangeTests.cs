using Rookery.Commands;
using Rookery.Notation;

namespace Rookery.Tests.Commands;

public sealed class StepRangeTests
{
    [Theory]
    [InlineData(null, 0, long.MaxValue)]
    [InlineData("20..40", 20, 40)]
    [InlineData("20", 20, 20)]
    [InlineData("20..", 20, long.MaxValue)]
    [InlineData("..40", 0, 40)]
    [InlineData("0", 0, 0)]
    public void Parse_Range_HasBothEnds(string? text, long first, long last) =>
        Assert.Equal(new StepRange(first, last), StepRange.Parse(text));

    [Theory]
    [InlineData("")]
    [InlineData("..")]
    [InlineData("-1..5")]
    [InlineData("5..4")]
    [InlineData("1..2..3")]
    [InlineData("count.fj")]
    [InlineData("99999999999999999999")]
    public void Parse_AnythingElse_IsRefused(string text) =>
        Assert.Throws<InputException>(() => StepRange.Parse(text));
}
