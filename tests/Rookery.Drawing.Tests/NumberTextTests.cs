namespace Rookery.Drawing.Tests;

public sealed class NumberTextTests
{
    [Theory]
    [InlineData(0, "0")]
    [InlineData(0.5, "0.5")]
    [InlineData(12.345, "12.35")]
    [InlineData(1_234, "1,234")]
    [InlineData(999_999, "999,999")]
    [InlineData(1_234_567, "1.23 M")]
    [InlineData(999_600_000, "1 G")]
    [InlineData(1e18, "1 E")]
    [InlineData(9.2e18, "9.2 E")]
    [InlineData(-2_500_000, "-2.5 M")]
    public void Short_Values_ReadAsPeopleWriteThem(double value, string text) =>
        Assert.Equal(text, NumberText.Short(value));

    [Theory]
    [InlineData(9_999, "9,999")]
    [InlineData(12_345, "12k")]
    [InlineData(1_234_567, "1.2M")]
    [InlineData(999_999, "1M")]
    public void Compact_Values_AreShort(long value, string text) => Assert.Equal(text, NumberText.Compact(value));

    [Theory]
    [InlineData(0, "0 %")]
    [InlineData(0.001, "< 1 %")]
    [InlineData(0.5, "50 %")]
    [InlineData(0.9999, "> 99 %")]
    [InlineData(1, "100 %")]
    public void Percent_Shares_NeverClaimAllOrNothing(double share, string text) =>
        Assert.Equal(text, NumberText.Percent(share));

    [Theory]
    [InlineData(300, "units", "300 units")]
    [InlineData(1_200_000, "units", "1.2 M units")]
    [InlineData(950, "ns", "950 ns")]
    [InlineData(12_500, "ns", "12.5 µs")]
    [InlineData(2_340_000_000, "ns", "2,340 ms")]
    [InlineData(90e9, "ns", "90 s")]
    public void TimeText_Of_ScalesNanoseconds(double time, string unit, string text) =>
        Assert.Equal(text, TimeText.Of(time, unit));

    [Fact]
    public void Ticks_Within_AreRoundAndInside()
    {
        Assert.Equal([0, 2, 4, 6, 8], Ticks.Within(0, 9, 5));
        Assert.Equal([10, 100, 1_000], Ticks.Logarithmic(10, 9_000).Where(tick => Math.Log10(tick) % 1 == 0));
        Gen.Select(Gen.Double[0, 1e18], Gen.Double[1e-3, 1e18]).Sample((from, length) =>
        {
            var ticks = Ticks.Within(from, from + length, 6);
            Assert.InRange(ticks.Length, from + length > from ? 0 : 1, 20);
            var labels = ticks.Select(tick => NumberText.Tick(tick, ticks)).ToList();
            var (least, largest) = (from - (length * 1e-6) - (from * 1e-8), (from + length) * 1.0000001);
            Assert.All(ticks, tick => Assert.InRange(tick, least, largest));
            Assert.All(labels, label => Assert.NotEmpty(label));
        });
    }
}
