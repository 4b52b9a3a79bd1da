namespace Rookery.Drawing;

/// <summary>How wide text comes out: advance widths of IBM Plex Sans, regular and bold.</summary>
/// <remarks>
/// <para>
/// Read from the tables <c>hmtx</c> and <c>cmap</c> of the font files in the npm package
/// <c>@fontsource/ibm-plex-sans</c> 5.3.0 (SIL Open Font License 1.1), in thousandths of the size. Bold is the wider of
/// weights 600 and 700. Characters outside of the table count as <see cref="Unknown"/>, those of the wide scripts
/// (East Asian ideographs, Hangul, kana, emoji) as 1,000. Kerning is left out: it only makes text shorter.
/// </para>
/// <para>
/// Where the font is missing a reader's program takes another. <see cref="TextFit"/> therefore leaves a reserve.
/// </para>
/// </remarks>
public static class FontWidths
{
    /// <summary>The family that the widths belong to.</summary>
    public const string Family = "IBM Plex Sans";

    /// <summary>Height of ascenders above the baseline, as a share of the size.</summary>
    public const double Rise = 0.78;

    /// <summary>Depth of descenders below the baseline, as a share of the size.</summary>
    public const double Drop = 0.22;

    /// <summary>Height of capitals above the baseline, as a share of the size.</summary>
    public const double Capitals = 0.698;

    private const int Unknown = 700;
    private const int Wide = 1_000;

    private static ReadOnlySpan<short> Regular =>
    [
        // U+0020 to U+007E
        236, 284, 419, 713, 598, 927, 694, 242, 335, 335, 450, 600, 272, 399, 272, 383,
        600, 600, 600, 600, 600, 600, 600, 600, 600, 600, 292, 292, 600, 600, 600, 477,
        891, 641, 653, 621, 671, 583, 559, 695, 707, 400, 510, 634, 501, 812, 707, 708,
        606, 708, 640, 581, 572, 678, 609, 891, 613, 593, 580, 317, 383, 317, 600, 565,
        600, 534, 580, 503, 580, 549, 324, 528, 568, 250, 250, 527, 272, 873, 568, 560,
        580, 580, 367, 487, 351, 568, 492, 768, 507, 499, 464, 343, 314, 343, 600,

        // U+00A0 to U+00FF
        236, 284, 514, 595, 612, 605, 314, 586, 600, 776, 399, 513, 600, 0, 476, 600,
        468, 600, 346, 346, 600, 573, 652, 326, 600, 359, 398, 513, 847, 872, 824, 467,
        641, 641, 641, 641, 641, 641, 907, 621, 583, 583, 583, 583, 400, 400, 400, 400,
        674, 707, 708, 708, 708, 708, 708, 600, 708, 678, 678, 678, 678, 593, 606, 640,
        534, 534, 534, 534, 534, 534, 864, 503, 549, 549, 549, 549, 250, 250, 250, 250,
        555, 568, 560, 560, 560, 560, 560, 600, 568, 568, 568, 568, 568, 499, 580, 499,
    ];

    private static ReadOnlySpan<short> Bold =>
    [
        // U+0020 to U+007E
        236, 320, 493, 656, 601, 974, 721, 268, 338, 338, 601, 600, 310, 403, 310, 460,
        600, 600, 600, 600, 600, 600, 600, 600, 600, 600, 330, 330, 600, 600, 600, 500,
        903, 685, 667, 651, 697, 607, 585, 719, 724, 432, 559, 696, 530, 819, 724, 714,
        656, 714, 674, 624, 584, 694, 650, 973, 673, 649, 607, 334, 460, 334, 600, 559,
        600, 569, 608, 517, 608, 562, 361, 552, 596, 286, 286, 577, 303, 894, 596, 564,
        608, 608, 404, 504, 383, 596, 538, 841, 560, 534, 518, 372, 402, 372, 600,

        // U+00A0 to U+00FF
        236, 320, 552, 586, 628, 650, 402, 574, 600, 792, 449, 558, 600, 0, 468, 600,
        470, 600, 347, 345, 600, 602, 677, 358, 600, 348, 433, 558, 840, 863, 828, 494,
        685, 685, 685, 685, 685, 685, 968, 651, 607, 607, 607, 607, 432, 432, 432, 432,
        702, 724, 714, 714, 714, 714, 714, 600, 714, 694, 694, 694, 694, 649, 656, 692,
        569, 569, 569, 569, 569, 569, 864, 517, 562, 562, 562, 562, 286, 286, 286, 286,
        603, 596, 564, 564, 564, 564, 564, 600, 572, 596, 596, 596, 596, 534, 608, 534,
    ];

    /// <summary>Width of a text in pixels, in the table's font.</summary>
    /// <param name="text">Any text.</param>
    /// <param name="size">Size of the font in pixels.</param>
    /// <param name="isBold">Whether it is set bold.</param>
    /// <returns>For <c>"T1"</c> at 20 pixels: (572 + 600) / 1000 * 20 = 23.44.</returns>
    public static double Measure(ReadOnlySpan<char> text, double size, bool isBold = false)
    {
        // Nearly all text is of the first letters of the table; a page, whose code is interpreted, measures some
        // hundred texts a step.
        var table = isBold ? Bold : Regular;
        var sum = 0L;
        for (var i = 0; i < text.Length; i++)
        {
            var letter = text[i];
            if (letter is < ' ' or > '~')
                return (sum + RestOf(text[i..], isBold)) * size / 1000;
            sum += table[letter - ' '];
        }

        return sum * size / 1000;
    }

    private static long RestOf(ReadOnlySpan<char> text, bool isBold)
    {
        var sum = 0L;
        foreach (var rune in text.EnumerateRunes())
            sum += WidthOf(rune.Value, isBold);
        return sum;
    }

    private static int WidthOf(int code, bool isBold)
    {
        var table = isBold ? Bold : Regular;
        return code switch
        {
            < 0x20 => table[0],
            < 0x7F => table[code - 0x20],
            >= 0xA0 and <= 0xFF => table[code - 0xA0 + 0x5F],
            0x2013 or 0x2212 => 600,
            0x2014 => 780,
            0x2018 or 0x2019 => isBold ? 300 : 273,
            0x201C or 0x201D => isBold ? 535 : 475,
            0x2026 => isBold ? 897 : 803,
            (>= 0x300 and <= 0x36F) or (>= 0x200B and <= 0x200F) => 0,
            (>= 0x1100 and <= 0x115F) or (>= 0x2E80 and <= 0xA4CF) or (>= 0xAC00 and <= 0xD7A3) => Wide,
            (>= 0xF900 and <= 0xFAFF) or (>= 0xFE30 and <= 0xFE6F) or (>= 0xFF00 and <= 0xFF60) or > 0xFFFF => Wide,
            _ => Unknown,
        };
    }
}
