namespace Rookery.Drawing.Tests;

public sealed class LetteringTests
{
    [Fact]
    public void Measure_WorkedExample_IsTheSumOfTheAdvances() =>
        Assert.Equal(23.44, FontWidths.Measure("T1", 20), 1e-9);

    [Fact]
    public void Measure_WideScripts_CountAsFullWidth() => Assert.Equal(40, FontWidths.Measure("木立", 20), 1e-9);

    [Fact]
    public void Shorten_AnyText_FitsOrIsEmpty() =>
        Gen.Select(Gen.String[0, 60], Gen.Double[0, 400]).Sample((text, width) =>
        {
            var shown = TextFit.Shorten(text, 20, width);
            Assert.True(shown.Length == 0 || TextFit.Fits(shown, 20, width));
            if (TextFit.Fits(text, 20, width))
                Assert.Equal(text, shown);
        });

    [Fact]
    public void Shorten_LongText_EndsWithAnEllipsis() =>
        Assert.Equal("count(0…", TextFit.Shorten("count(0, 500)", 20, 96));

    [Fact]
    public void Wrap_AnyText_GivesLinesThatFit() =>
        Gen.Select(Gen.String[0, 200], Gen.Int[1, 4]).Sample((text, linesMax) =>
        {
            var lines = TextFit.Wrap(text, 20, 180, linesMax);
            Assert.InRange(lines.Count, 1, linesMax);
            Assert.All(lines, line => Assert.True(line.Length == 0 || TextFit.Fits(line, 20, 180)));
        });

    [Fact]
    public void Wrap_ShortText_LosesNoWord() =>
        Assert.Equal(["one two three", "four five"], TextFit.Wrap("one two three four five", 20, 135, 3));
}
