using Rookery.Notation;
using SkiaSharp;
using Svg.Skia;

namespace Rookery.Images;

/// <summary>Makes PNG and PDF from the SVG of a figure.</summary>
/// <remarks>
/// The same SVG gives the same bytes on one kind of computer: the fonts are the program's own and the PDF carries a
/// fixed date. Holds native memory; for one thread at a time.
/// </remarks>
internal sealed class FigurePrinter : IDisposable
{
    /// <summary>The most pixels of one PNG, 100 million: 400 MB while it is drawn.</summary>
    public const long PixelsMax = 100_000_000;

    /// <summary>A CSS pixel is 1/96 inch, a PDF point 1/72.</summary>
    private const float PointsPerPixel = 0.75f;

    private readonly FigureFonts _fonts = new();

    /// <summary>The figure as PNG.</summary>
    /// <param name="svg">Its SVG.</param>
    /// <param name="scale">Pixels for each of the SVG's, above 0; 2 makes slides sharp.</param>
    /// <exception cref="InputException">The picture would have more than <see cref="PixelsMax"/> pixels.</exception>
    public byte[] ToPng(string svg, double scale)
    {
        using SKSvg drawn = Read(svg);
        SKPicture picture = drawn.Picture!;
        int width = Math.Max(1, (int)Math.Ceiling(Math.Min(picture.CullRect.Width * scale, int.MaxValue)));
        int height = Math.Max(1, (int)Math.Ceiling(Math.Min(picture.CullRect.Height * scale, int.MaxValue)));
        if ((long)width * height > PixelsMax)
            throw new InputException(AppErrors.PictureTooLarge(width, height, PixelsMax));

        using var bitmap = new SKBitmap(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Premul));
        using (var canvas = new SKCanvas(bitmap))
        {
            canvas.Clear(SKColors.White);
            canvas.Scale((float)scale);
            canvas.Translate(-picture.CullRect.Left, -picture.CullRect.Top);
            canvas.DrawPicture(picture);
        }

        using SKData png = bitmap.Encode(SKEncodedImageFormat.Png, 100);
        return png.ToArray();
    }

    /// <summary>The figure as a PDF of one page, with its text as text.</summary>
    /// <param name="svg">Its SVG.</param>
    /// <param name="title">What a reader's window shows.</param>
    public byte[] ToPdf(string svg, string title)
    {
        using SKSvg drawn = Read(svg);
        SKRect area = drawn.Picture!.CullRect;
        using var pdf = new MemoryStream();
        var metadata = new SKDocumentPdfMetadata
        {
            Title = title,
            Creator = "Rookery",
            Producer = "Rookery",

            // A date of today would make every build of a course differ; this one only says that it is no date.
            Creation = DateTime.UnixEpoch,
            Modified = DateTime.UnixEpoch,

            // Four pixels of a raster to a point: page sizes come out exact.
            RasterDpi = 288,
            EncodingQuality = 101,
        };
        using (SKDocument document = SKDocument.CreatePdf(pdf, metadata))
        {
            SKCanvas page = document.BeginPage(area.Width * PointsPerPixel, area.Height * PointsPerPixel);
            page.Scale(PointsPerPixel);
            page.Translate(-area.Left, -area.Top);
            page.DrawPicture(drawn.Picture);
            document.EndPage();
            document.Close();
        }

        return pdf.ToArray();
    }

    /// <inheritdoc/>
    public void Dispose() => _fonts.Dispose();

    private SKSvg Read(string svg)
    {
        var drawn = new SKSvg();
        drawn.Settings.TypefaceProviders!.Clear();
        drawn.Settings.TypefaceProviders.Add(_fonts);
        drawn.FromSvg(svg);
        Invariant.Holds(drawn.Picture is not null, "A figure's SVG cannot be read back.");
        return drawn;
    }
}
