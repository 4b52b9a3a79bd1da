namespace Rookery.Drawing.Tests;

public sealed class ColourReferences
{
    // Web Content Accessibility Guidelines 2.2, definition of contrast ratio: "can range from 1 to 21"; its
    // Understanding page for 1.4.3 names #777 as just below 4.5 on white (4.48) and #767676 as just above (4.54).
    [Theory]
    [InlineData(0x000000, 21)]
    [InlineData(0xFFFFFF, 1)]
    [InlineData(0x777777, 4.48)]
    [InlineData(0x767676, 4.54)]
    public void Contrast_OnWhite_IsThePublishedNumber(int colour, double ratio) =>
        Assert.Equal(ratio, Colour.Contrast(Colour.FromHex(colour), Colour.White), 0.005);

    // CIE 15: L* of black 0, of white 100, of 18.42 % grey 50.
    [Theory]
    [InlineData(0x000000, 0)]
    [InlineData(0xFFFFFF, 100)]
    [InlineData(0x777777, 50.03)]
    public void Lightness_OfGreys_IsThePublishedNumber(int colour, double lightness) =>
        Assert.Equal(lightness, Colour.FromHex(colour).Lightness, 0.02);

    // M. Okabe, K. Ito, "Color Universal Design", figure 16: the eight colours, sRGB.
    [Theory]
    [InlineData(0, 0, 114, 178)]
    [InlineData(1, 230, 159, 0)]
    [InlineData(2, 0, 158, 115)]
    [InlineData(3, 240, 228, 66)]
    [InlineData(4, 204, 121, 167)]
    [InlineData(5, 86, 180, 233)]
    [InlineData(6, 213, 94, 0)]
    [InlineData(7, 0, 0, 0)]
    public void WorkerColours_AreThePublishedSet(int worker, byte red, byte green, byte blue) =>
        Assert.Equal(new Colour(red, green, blue), Style.Light.FillOf(Ink.Worker(worker)).Ground);
}
