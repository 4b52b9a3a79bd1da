using System.Text;
using Rookery.Images;
using Rookery.Notation;
using SkiaSharp;

namespace Rookery.Tests.Images;

public sealed class FigurePrinterTests
{
    private const string Figure = """
        <svg xmlns="http://www.w3.org/2000/svg" width="200" height="100" font-family="IBM Plex Sans">
        <rect width="200" height="100" fill="#ffffff"/>
        <rect x="10" y="10" width="30" height="20" fill="#0072b2"/>
        <text x="60" y="60" font-size="30">steals</text>
        </svg>
        """;

    [Theory]
    [InlineData(1, 200, 100)]
    [InlineData(2, 400, 200)]
    [InlineData(0.5, 100, 50)]
    public void ToPng_Scale_GivesThatManyPixels(double scale, int width, int height)
    {
        using var printer = new FigurePrinter();

        using SKBitmap picture = SKBitmap.Decode(printer.ToPng(Figure, scale));

        Assert.Equal((width, height), (picture.Width, picture.Height));
    }

    [Fact]
    public void ToPng_BoxAndText_AreBothThere()
    {
        using var printer = new FigurePrinter();

        using SKBitmap picture = SKBitmap.Decode(printer.ToPng(Figure, 2));

        Assert.Equal(new SKColor(0x00, 0x72, 0xb2), picture.GetPixel(50, 40));
        Assert.Equal(SKColors.White, picture.GetPixel(5, 195));
        int dark = CountDark(picture, new SKRectI(120, 60, 400, 140));
        Assert.InRange(dark, 400, 4_000);
    }

    [Fact]
    public void ToPng_OtherLetters_GiveOtherPixels()
    {
        // Without a font of its own the drawing library writes the same box for every letter, and says nothing.
        using var printer = new FigurePrinter();

        byte[] one = printer.ToPng(Figure, 2);
        byte[] other = printer.ToPng(Figure.Replace("steals", "sleeps", StringComparison.Ordinal), 2);

        Assert.NotEqual(one, other);
    }

    [Fact]
    public void ToPng_TooManyPixels_IsALimit()
    {
        using var printer = new FigurePrinter();

        InputException refused = Assert.Throws<InputException>(() => printer.ToPng(Figure, 10_000));

        Assert.True(refused.IsLimit);
    }

    [Fact]
    public void ToPdf_Figure_IsOnePageOfItsSizeInPoints()
    {
        using var printer = new FigurePrinter();

        string pdf = Encoding.Latin1.GetString(printer.ToPdf(Figure, "steals & more"));

        Assert.StartsWith("%PDF-", pdf, StringComparison.Ordinal);
        Assert.EndsWith("%%EOF", pdf.TrimEnd(), StringComparison.Ordinal);
        Assert.Single(System.Text.RegularExpressions.Regex.Matches(pdf, @"/Type /Page\b"));
        Assert.Contains("/MediaBox [0 0 150 75]", pdf, StringComparison.Ordinal);
        Assert.Contains("/FontFile", pdf, StringComparison.Ordinal);
    }

    [Fact]
    public void ToPngAndToPdf_Twice_GiveTheSameBytes()
    {
        using var first = new FigurePrinter();
        using var second = new FigurePrinter();

        Assert.Equal(first.ToPng(Figure, 2), second.ToPng(Figure, 2));
        Assert.Equal(first.ToPdf(Figure, "a"), second.ToPdf(Figure, "a"));
    }

    private static int CountDark(SKBitmap picture, SKRectI area)
    {
        int dark = 0;
        for (int y = area.Top; y < area.Bottom; y++)
        {
            for (int x = area.Left; x < area.Right; x++)
                dark += picture.GetPixel(x, y).Red < 100 ? 1 : 0;
        }

        return dark;
    }
}
