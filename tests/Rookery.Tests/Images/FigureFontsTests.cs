using Rookery.Images;
using SkiaSharp;

namespace Rookery.Tests.Images;

public sealed class FigureFontsTests
{
    /// <summary>What views, sentences and laws write beside plain letters.</summary>
    private const string Signs = "∞≤≥×→←…–—·≈²";

    [Fact]
    public void All_LettersAndSigns_HaveAGlyphInEveryFont()
    {
        using var fonts = new FigureFonts();

        string text = string.Concat(Enumerable.Range(' ', 95).Select(c => (char)c)) + "àéîõüßçñÅØ" + Signs;
        foreach (SKTypeface font in fonts.All)
            AssertWrites(font, text);
    }

    [Fact]
    public void FromFamilyName_GreekLetters_HaveAGlyphInTheSansFonts()
    {
        using var fonts = new FigureFonts();

        foreach (int weight in new[] { 400, 600, 700 })
        {
            SKTypeface font = fonts.FromFamilyName("sans-serif", (SKFontStyleWeight)weight, default, default)!;
            AssertWrites(font, "αβωπΣ");
        }
    }

    [Theory]
    [InlineData("IBM Plex Sans", 400, "IBM Plex Sans")]
    [InlineData("Helvetica", 700, "IBM Plex Sans SemiBold")]
    [InlineData("monospace", 400, "IBM Plex Mono")]
    public void FromFamilyName_AnyFamily_IsOneOfOurs(string family, int weight, string expected)
    {
        using var fonts = new FigureFonts();

        SKTypeface? font = fonts.FromFamilyName(family, (SKFontStyleWeight)weight, default, default);

        Assert.StartsWith(font!.FamilyName, expected, StringComparison.Ordinal);
        Assert.Equal(expected.EndsWith("SemiBold", StringComparison.Ordinal), font.FontWeight == 600);
    }

    private static void AssertWrites(SKTypeface font, string text)
    {
        using var sized = new SKFont(font);
        Assert.DoesNotContain(text, letter => sized.GetGlyph(letter) == 0);
    }
}
