using SkiaSharp;
using Svg.Skia.TypefaceProviders;

namespace Rookery.Images;

/// <summary>The fonts of figures; they are part of the program, so a figure is the same everywhere.</summary>
/// <remarks>
/// IBM Plex Sans in regular and semibold, and IBM Plex Mono for families named <c>mono</c>. The drawing library knows
/// no font of the computer: a request for any other family gets one of these.
/// </remarks>
internal sealed class FigureFonts : ITypefaceProvider, IDisposable
{
    /// <summary>Weights from here on are drawn semibold.</summary>
    private const int BoldFrom = 600;

    private readonly SKTypeface _regular = Load("IBMPlexSans-Regular.woff");
    private readonly SKTypeface _bold = Load("IBMPlexSans-SemiBold.woff");
    private readonly SKTypeface _mono = Load("IBMPlexMono-Regular.woff");

    /// <summary>All of them, for the check of what they can write.</summary>
    public IReadOnlyList<SKTypeface> All => [_regular, _bold, _mono];

    /// <inheritdoc/>
    public SKTypeface? FromFamilyName(
        string fontFamily, SKFontStyleWeight fontWeight, SKFontStyleWidth fontWidth, SKFontStyleSlant fontStyle)
    {
        if (fontFamily.Contains("mono", StringComparison.OrdinalIgnoreCase))
            return _mono;
        return (int)fontWeight >= BoldFrom ? _bold : _regular;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _regular.Dispose();
        _bold.Dispose();
        _mono.Dispose();
    }

    /// <summary>A font's file (WOFF), for pages.</summary>
    public static byte[] Bytes(string name)
    {
        using Stream stream = typeof(FigureFonts).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidDataException($"The font {name} is missing from the program.");
        byte[] woff = new byte[stream.Length];
        stream.ReadExactly(woff);
        return woff;
    }

    private static SKTypeface Load(string name)
    {
        using SKData data = SKData.CreateCopy(WoffFont.ToSfnt(Bytes(name)));
        return SKTypeface.FromData(data)
            ?? throw new InvalidDataException($"The font {name} cannot be loaded.");
    }
}
