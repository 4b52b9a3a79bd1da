using System.Globalization;
using System.IO.Compression;
using System.Text;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using Rookery.Lessons.Site;

namespace Rookery.Slides;

/// <summary>Writes slide decks: one slide a figure, what to say in its notes, what it shows in its text
/// alternative.</summary>
/// <remarks>The same deck gives the same bytes: names of parts are fixed, and so are the dates in the
/// archive.</remarks>
internal static class DeckWriter
{
    /// <summary>The earliest date that an archive can hold; it only says that it is none.</summary>
    private static readonly DateTimeOffset NoDate = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>The deck as the bytes of a .pptx file.</summary>
    /// <param name="deck">What is on it.</param>
    /// <param name="print">From SVG to PNG.</param>
    public static byte[] Write(DeckFile deck, Func<string, byte[]> print)
    {
        using var raw = new MemoryStream();
        using (var document = PresentationDocument.Create(raw, PresentationDocumentType.Presentation))
            Fill(document, deck, print);
        return WithoutDates(raw);
    }

    private static void Fill(PresentationDocument document, DeckFile deck, Func<string, byte[]> print)
    {
        PresentationPart presentation = document.AddPresentationPart();

        // The library draws an id of its own for this one.
        document.ChangeIdOfPart(presentation, "presentation");
        var master = presentation.AddNewPart<SlideMasterPart>("master");
        var layout = master.AddNewPart<SlideLayoutPart>("layout");
        layout.AddPart(master, "master");
        var theme = master.AddNewPart<ThemePart>("theme");
        var notesMaster = presentation.AddNewPart<NotesMasterPart>("notesMaster");
        var notesTheme = notesMaster.AddNewPart<ThemePart>("theme");
        Feed(presentation, DeckXml.Presentation(deck.Slides.Length + 1));
        Feed(master, DeckXml.Master());
        Feed(layout, DeckXml.Layout());
        Feed(theme, DeckXml.Theme());
        Feed(notesMaster, DeckXml.NotesMaster());
        Feed(notesTheme, DeckXml.Theme());

        SlidePart first = AddSlide(presentation, layout, 1);
        Feed(first, DeckXml.TitleSlide(deck.Title, deck.Subtitle));
        for (int i = 0; i < deck.Slides.Length; i++)
        {
            DeckSlide one = deck.Slides[i];
            SlidePart slide = AddSlide(presentation, layout, i + 2);
            Feed(slide, DeckXml.FigureSlide(one.Title, one.Alternative));
            ImagePart image = slide.AddNewPart<ImagePart>("image/png", "figure");
            using (var png = new MemoryStream(print(one.Svg)))
                image.FeedData(png);
            Feed(slide.AddNewPart<ImagePart>("image/svg+xml", "drawing"), one.Svg);
            var notes = slide.AddNewPart<NotesSlidePart>("notes");
            notes.AddPart(notesMaster, "notesMaster");
            notes.AddPart(slide, "slide");
            Feed(notes, DeckXml.Notes(one.Notes));
        }
    }

    private static SlidePart AddSlide(PresentationPart presentation, SlideLayoutPart layout, int number)
    {
        var slide = presentation.AddNewPart<SlidePart>(
            string.Create(CultureInfo.InvariantCulture, $"slide{number}"));
        slide.AddPart(layout, "layout");
        return slide;
    }

    private static void Feed(OpenXmlPart part, string xml)
    {
        using var bytes = new MemoryStream(Encoding.UTF8.GetBytes(xml));
        part.FeedData(bytes);
    }

    // The library stamps each entry with the time of day; the entries are packed once more without.
    private static byte[] WithoutDates(MemoryStream raw)
    {
        raw.Position = 0;
        using var packed = new MemoryStream();
        using (var from = new ZipArchive(raw, ZipArchiveMode.Read, leaveOpen: true))
        using (var to = new ZipArchive(packed, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (ZipArchiveEntry entry in from.Entries.OrderBy(entry => Rank(entry.FullName)).ThenBy(entry =>
                entry.FullName, StringComparer.Ordinal))
            {
                // Pictures are packed already.
                bool isPicture = entry.FullName.EndsWith(".png", StringComparison.Ordinal);
                ZipArchiveEntry copy = to.CreateEntry(
                    entry.FullName, isPicture ? CompressionLevel.NoCompression : CompressionLevel.Optimal);
                copy.LastWriteTime = NoDate;
                using Stream source = entry.Open();
                using Stream target = copy.Open();
                source.CopyTo(target);
            }
        }

        return packed.ToArray();
    }

    // Readers look for the list of contents first.
    private static int Rank(string name) => name == "[Content_Types].xml" ? 0 : 1;
}
