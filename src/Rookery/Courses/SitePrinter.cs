using System.Collections.Concurrent;
using System.Text;
using Rookery.Images;
using Rookery.Lessons.Site;
using Rookery.Slides;

namespace Rookery.Courses;

/// <summary>From the files of a course to their bytes: prints pictures and slide decks. For several threads.</summary>
/// <param name="cache">Where printed pictures are kept.</param>
internal sealed class SitePrinter(ContentCache cache) : IDisposable
{
    /// <summary>Pixels of a PNG for each of the figure's: sharp on a projector of 3,200 pixels.</summary>
    private const double Scale = 2;

    private readonly ConcurrentBag<FigurePrinter> _printers = [];

    /// <summary>The bytes of a file.</summary>
    public ReadOnlyMemory<byte> BytesOf(SiteFile file) => file switch
    {
        TextFile text => Encoding.UTF8.GetBytes(text.Text),
        BinaryFile binary => binary.Bytes,
        PrintFile print => Printed(Path.GetExtension(print.Path), print.Svg, print.Title),
        DeckFile deck => DeckWriter.Write(deck, svg => Printed(".png", svg, "")),
        _ => throw new ArgumentOutOfRangeException(nameof(file), file.Path, "No such kind of file."),
    };

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (FigurePrinter printer in _printers)
            printer.Dispose();
    }

    private byte[] Printed(string ending, string svg, string title)
    {
        string key = ending == ".png" ? svg : $"{title}\n{svg}";
        if (cache.Find(ending, key) is { } kept)
            return kept;

        // A printer serves one thread at a time; there are as many as threads that print at once.
        FigurePrinter printer = _printers.TryTake(out FigurePrinter? free) ? free : new FigurePrinter();
        try
        {
            byte[] bytes = ending == ".png" ? printer.ToPng(svg, Scale) : printer.ToPdf(svg, title);
            cache.Keep(ending, key, bytes);
            return bytes;
        }
        finally
        {
            _printers.Add(printer);
        }
    }
}
