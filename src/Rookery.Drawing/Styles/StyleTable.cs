using System.Collections.Immutable;

namespace Rookery.Drawing;

/// <summary>The paints of a style, as data.</summary>
internal sealed record StyleTable(
    ImmutableArray<Paint> Roles,
    ImmutableArray<Paint> Workers,
    Colour ScaleLow,
    Colour ScaleHigh)
{
    // Okabe and Ito's set by name. Lightness L*: black 0, blue 47, vermilion 54, green 58, purple 62, sky 70,
    // orange 71, yellow 90. The first four workers are apart by at least 11 also in grey.
    private const int Black = 0x000000;
    private const int Blue = 0x0072B2;
    private const int Vermilion = 0xD55E00;
    private const int Green = 0x009E73;
    private const int Purple = 0xCC79A7;
    private const int Sky = 0x56B4E9;
    private const int Orange = 0xE69F00;
    private const int Yellow = 0xF0E442;

    public static StyleTable Light { get; } = new(
        RolesOf(role => role switch
        {
            Role.None or Role.Worker or Role.Scale => default,
            Role.Paper => Plain(0xFFFFFF),
            Role.Text => Plain(0x1B1B1B),
            Role.QuietText => Plain(0x555555),
            Role.Axis => Plain(0x555555),
            Role.Grid => Plain(0xE2E2E2),
            Role.Panel => Plain(0xF4F4F2),
            Role.Working => Plain(Blue),
            Role.Scheduling => Plain(0x8F8F8F),
            Role.Searching => Hatched(0xFFFFFF, Hatch.Rising, 0x909090),
            Role.Blocked => Hatched(0xF3DDE9, Hatch.Dots, 0xBB7FA5),
            Role.Asleep => Hatched(0xFFFFFF, Hatch.Level, 0xCFCFCF),
            Role.Waiting => Plain(0xFFFFFF),
            Role.Law => Plain(0xB84F00),
            Role.Emphasis => Plain(Blue),
            Role.Reference => Plain(0xC9C9C9),
        }),
        [
            Plain(Blue), Plain(Orange), Plain(Green), Plain(Yellow),
            Plain(Purple), Plain(Sky), Plain(Vermilion), Plain(Black),
        ],
        Colour.FromHex(0xF3F8FC),
        Colour.FromHex(0x00466E));

    public static StyleTable Grey { get; } = new(
        RolesOf(role => role switch
        {
            Role.None or Role.Worker or Role.Scale => default,
            Role.Paper => Plain(0xFFFFFF),
            Role.Text => Plain(0x000000),
            Role.QuietText => Plain(0x4A4A4A),
            Role.Axis => Plain(0x4A4A4A),
            Role.Grid => Plain(0xDDDDDD),
            Role.Panel => Plain(0xF4F4F4),
            Role.Working => Plain(0x4A4A4A),
            Role.Scheduling => Plain(0x9A9A9A),
            Role.Searching => Hatched(0xFFFFFF, Hatch.Rising, 0x808080),
            Role.Blocked => Hatched(0xE4E4E4, Hatch.Dots, 0x8C8C8C),
            Role.Asleep => Hatched(0xFFFFFF, Hatch.Level, 0xC4C4C4),
            Role.Waiting => Plain(0xFFFFFF),
            Role.Law => Plain(0x2A2A2A),
            Role.Emphasis => Plain(0x4A4A4A),
            Role.Reference => Plain(0xCFCFCF),
        }),
        [
            Plain(0x4A4A4A), Plain(0xB8B8B8), Plain(0x858585), Plain(0xEDEDED),
            Hatched(0xEDEDED, Hatch.Falling, 0x8A8A8A), Hatched(0x858585, Hatch.Falling, 0xC4C4C4),
            Hatched(0xB8B8B8, Hatch.Dots, 0x7D7D7D), Hatched(0x3A3A3A, Hatch.Falling, 0x6A6A6A),
        ],
        Colour.FromHex(0xF7F7F7),
        Colour.FromHex(0x2E2E2E));

    // On dark paper the same hues stand, except for black, which would vanish: its place is taken by near white.
    // Hatches are drawn in lines that have a contrast of 3 against the paper and still bear white text (4.5).
    public static StyleTable Dark { get; } = new(
        RolesOf(role => role switch
        {
            Role.None or Role.Worker or Role.Scale => default,
            Role.Paper => Plain(0x14181C),
            Role.Text => Plain(0xECECE8),
            Role.QuietText => Plain(0xAEB4B9),
            Role.Axis => Plain(0x8B949C),
            Role.Grid => Plain(0x343C44),
            Role.Panel => Plain(0x1D2329),
            Role.Working => Plain(0x2F86C4),
            Role.Scheduling => Plain(0xA9B0B6),
            Role.Searching => Hatched(0x14181C, Hatch.Rising, 0x6B747C),
            Role.Blocked => Hatched(0x2C1F29, Hatch.Dots, 0x9A5C85),
            Role.Asleep => Hatched(0x14181C, Hatch.Level, 0x656E76),
            Role.Waiting => Plain(0x14181C),
            Role.Law => Plain(0xFF9A4D),
            Role.Emphasis => Plain(Sky),
            Role.Reference => Plain(0x757E86),
        }),
        [
            Plain(Blue), Plain(Orange), Plain(Green), Plain(Yellow),
            Plain(Purple), Plain(Sky), Plain(Vermilion), Plain(0xF4F4F4),
        ],
        Colour.FromHex(0x1B242C),
        Colour.FromHex(0x9AD4F7));

    private static ImmutableArray<Paint> RolesOf(Func<Role, Paint> paint) => [.. Enum.GetValues<Role>().Select(paint)];

    private static Paint Plain(int hex) => new(Colour.FromHex(hex));

    private static Paint Hatched(int ground, Hatch hatch, int line) =>
        new(Colour.FromHex(ground), hatch, Colour.FromHex(line));
}
