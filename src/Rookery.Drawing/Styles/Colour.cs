using System.Globalization;

namespace Rookery.Drawing;

/// <summary>A colour of the sRGB space, opaque. <c>default</c> is black.</summary>
/// <param name="Red">0 to 255.</param>
/// <param name="Green">0 to 255.</param>
/// <param name="Blue">0 to 255.</param>
public readonly record struct Colour(byte Red, byte Green, byte Blue)
{
    /// <summary>Black.</summary>
    public static Colour Black => new(0, 0, 0);

    /// <summary>White.</summary>
    public static Colour White => new(255, 255, 255);

    /// <summary>Relative luminance, 0 (black) to 1 (white).</summary>
    /// <remarks>Source: Web Content Accessibility Guidelines 2.2 (W3C), definition of relative luminance.</remarks>
    public double Luminance => (0.2126 * Linear(Red)) + (0.7152 * Linear(Green)) + (0.0722 * Linear(Blue));

    /// <summary>Lightness L* of the CIE 1976 space, 0 to 100: equal steps look equal, also in grey print.</summary>
    public double Lightness =>
        Luminance <= 216.0 / 24389 ? Luminance * 24389 / 27 : (116 * Math.Cbrt(Luminance)) - 16;

    /// <summary>A colour from six hexadecimal digits, <c>0xRRGGBB</c>.</summary>
    public static Colour FromHex(int hex) =>
        new((byte)((hex >> 16) & 255), (byte)((hex >> 8) & 255), (byte)(hex & 255));

    /// <summary>How well one can be read on the other, from 1 (not) to 21; 4.5 is the least for text.</summary>
    /// <remarks>
    /// (L1 + 0.05) / (L2 + 0.05), L1 the lighter. Source: Web Content Accessibility Guidelines 2.2 (W3C), definition
    /// of contrast ratio, and success criterion 1.4.3. Black on white is 21.
    /// </remarks>
    public static double Contrast(Colour first, Colour second)
    {
        var (a, b) = (first.Luminance, second.Luminance);
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    /// <summary>The colour at <paramref name="share"/> (0 to 1) of the way to another, in sRGB.</summary>
    public Colour Towards(Colour other, double share) => new(
        Between(Red, other.Red, share), Between(Green, other.Green, share), Between(Blue, other.Blue, share));

    /// <summary><c>#RRGGBB</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"#{Red:X2}{Green:X2}{Blue:X2}");

    private static byte Between(byte from, byte to, double share) =>
        (byte)Math.Round(from + ((to - from) * Math.Clamp(share, 0, 1)), MidpointRounding.AwayFromZero);

    private static double Linear(byte part)
    {
        var value = part / 255.0;
        return value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);
    }
}
