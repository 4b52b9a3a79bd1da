using System.Globalization;
using System.Security;

namespace Rookery.Slides;

/// <summary>The parts of a presentation as XML: ISO/IEC 29500-1, PresentationML and DrawingML.</summary>
/// <remarks>Lengths are English Metric Units, 914,400 to the inch; a slide is 16 by 9.</remarks>
internal static class DeckXml
{
    /// <summary>Width of a slide.</summary>
    public const long Width = 12_192_000;

    /// <summary>Height of a slide.</summary>
    public const long Height = 6_858_000;

    private const long Margin = 406_400;
    private const long TitleHeight = 640_000;

    private const string Spaces =
        "xmlns:a=\"http://schemas.openxmlformats.org/drawingml/2006/main\" "
        + "xmlns:r=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships\" "
        + "xmlns:p=\"http://schemas.openxmlformats.org/presentationml/2006/main\"";

    private const string Head = "<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>";

    private const string NoGroup =
        "<p:nvGrpSpPr><p:cNvPr id=\"1\" name=\"\"/><p:cNvGrpSpPr/><p:nvPr/></p:nvGrpSpPr><p:grpSpPr><a:xfrm>"
        + "<a:off x=\"0\" y=\"0\"/><a:ext cx=\"0\" cy=\"0\"/><a:chOff x=\"0\" y=\"0\"/><a:chExt cx=\"0\" cy=\"0\"/>"
        + "</a:xfrm></p:grpSpPr>";

    private const string ColourMap =
        "<p:clrMap bg1=\"lt1\" tx1=\"dk1\" bg2=\"lt2\" tx2=\"dk2\" accent1=\"accent1\" accent2=\"accent2\" "
        + "accent3=\"accent3\" accent4=\"accent4\" accent5=\"accent5\" accent6=\"accent6\" hlink=\"hlink\" "
        + "folHlink=\"folHlink\"/>";

    /// <summary>The presentation with its slides in order.</summary>
    public static string Presentation(int slides)
    {
        string list = string.Concat(Enumerable.Range(0, slides).Select(i =>
            string.Create(CultureInfo.InvariantCulture, $"<p:sldId id=\"{256 + i}\" r:id=\"slide{i + 1}\"/>")));
        return $"{Head}<p:presentation {Spaces}><p:sldMasterIdLst><p:sldMasterId id=\"2147483648\" r:id=\"master\"/>"
            + "</p:sldMasterIdLst><p:notesMasterIdLst><p:notesMasterId r:id=\"notesMaster\"/></p:notesMasterIdLst>"
            + $"<p:sldIdLst>{list}</p:sldIdLst>"
            + Text($"<p:sldSz cx=\"{Width}\" cy=\"{Height}\"/><p:notesSz cx=\"{Height}\" cy=\"{Width}\"/>")
            + "</p:presentation>";
    }

    /// <summary>The master of all slides.</summary>
    public static string Master() =>
        $"{Head}<p:sldMaster {Spaces}><p:cSld><p:bg><p:bgRef idx=\"1001\"><a:schemeClr val=\"bg1\"/></p:bgRef></p:bg>"
        + $"<p:spTree>{NoGroup}{TitlePlace("Title", false)}</p:spTree></p:cSld>{ColourMap}<p:sldLayoutIdLst>"
        + "<p:sldLayoutId id=\"2147483649\" r:id=\"layout\"/></p:sldLayoutIdLst><p:txStyles><p:titleStyle><a:lvl1pPr>"
        + "<a:defRPr sz=\"2400\" b=\"1\"><a:solidFill><a:schemeClr val=\"tx1\"/></a:solidFill>"
        + "<a:latin typeface=\"+mj-lt\"/></a:defRPr></a:lvl1pPr></p:titleStyle><p:bodyStyle/><p:otherStyle/>"
        + "</p:txStyles></p:sldMaster>";

    /// <summary>The layout of all slides: a title, and room for a figure.</summary>
    public static string Layout() =>
        $"{Head}<p:sldLayout {Spaces} type=\"titleOnly\" preserve=\"1\"><p:cSld name=\"Title and figure\"><p:spTree>"
        + $"{NoGroup}{TitlePlace("Title", false)}</p:spTree></p:cSld><p:clrMapOvr><a:masterClrMapping/></p:clrMapOvr>"
        + "</p:sldLayout>";

    /// <summary>The first slide.</summary>
    public static string TitleSlide(string title, string subtitle) => Slide(
        Shape(2, "Title", "<p:ph type=\"title\"/>", Box(Margin, 2_300_000, Width - (2 * Margin), 1_200_000), title,
            4000)
        + Shape(3, "Subtitle", "", Box(Margin, 3_550_000, Width - (2 * Margin), 700_000), subtitle, 2000));

    /// <summary>
    /// A slide with a figure: its drawing, sharp at any size, is the relationship <c>drawing</c>; programs that know no
    /// SVG show the picture <c>figure</c>.
    /// </summary>
    /// <remarks>
    /// The drawing stands in an extension that older programs pass over: [MS-ODRAWXML], "svgBlip", from memory; the
    /// validator of the standard's library knows it.
    /// </remarks>
    public static string FigureSlide(string title, string alternative)
    {
        // The figure is 16 by 9 too, so below a title it leaves some room at both sides.
        const long height = Height - TitleHeight - 120_000;
        const long width = height * 16 / 9;
        string picture = $"<p:pic><p:nvPicPr><p:cNvPr id=\"3\" name=\"Figure\" descr=\"{Escape(alternative)}\"/>"
            + "<p:cNvPicPr><a:picLocks noChangeAspect=\"1\"/></p:cNvPicPr><p:nvPr/></p:nvPicPr><p:blipFill>"
            + "<a:blip r:embed=\"figure\"><a:extLst><a:ext uri=\"{96DAC541-7B7A-43D3-8B79-37D633B846F1}\">"
            + "<asvg:svgBlip xmlns:asvg=\"http://schemas.microsoft.com/office/drawing/2016/SVG/main\" "
            + "r:embed=\"drawing\"/></a:ext></a:extLst></a:blip>"
            + "<a:stretch><a:fillRect/></a:stretch></p:blipFill><p:spPr>"
            + Box((Width - width) / 2, TitleHeight, width, height)
            + "<a:prstGeom prst=\"rect\"><a:avLst/></a:prstGeom></p:spPr></p:pic>";
        return Slide(Shape(2, "Title", "<p:ph type=\"title\"/>", "", title, 0) + picture);
    }

    /// <summary>The master of all notes.</summary>
    public static string NotesMaster() =>
        $"{Head}<p:notesMaster {Spaces}><p:cSld><p:bg><p:bgRef idx=\"1001\"><a:schemeClr val=\"bg1\"/></p:bgRef></p:bg>"
        + $"<p:spTree>{NoGroup}</p:spTree></p:cSld>{ColourMap}</p:notesMaster>";

    /// <summary>The notes of a slide.</summary>
    public static string Notes(string notes) =>
        $"{Head}<p:notes {Spaces}><p:cSld><p:spTree>{NoGroup}"
        + "<p:sp><p:nvSpPr><p:cNvPr id=\"2\" name=\"Slide\"/><p:cNvSpPr><a:spLocks noGrp=\"1\" noRot=\"1\" "
        + "noChangeAspect=\"1\"/></p:cNvSpPr><p:nvPr><p:ph type=\"sldImg\"/></p:nvPr></p:nvSpPr><p:spPr/></p:sp>"
        + Shape(3, "Notes", "<p:ph type=\"body\" idx=\"1\"/>", "", notes, 0)
        + "</p:spTree></p:cSld><p:clrMapOvr><a:masterClrMapping/></p:clrMapOvr></p:notes>";

    /// <summary>Colours and fonts: the set of Okabe and Ito, as in the figures.</summary>
    public static string Theme()
    {
        static string Colour(string name, string hex) => $"<a:{name}><a:srgbClr val=\"{hex}\"/></a:{name}>";
        const string fill = "<a:solidFill><a:schemeClr val=\"phClr\"/></a:solidFill>";
        const string line = "<a:ln w=\"9525\"><a:solidFill><a:schemeClr val=\"phClr\"/></a:solidFill></a:ln>";
        const string effect = "<a:effectStyle><a:effectLst/></a:effectStyle>";
        const string font = "<a:latin typeface=\"IBM Plex Sans\"/><a:ea typeface=\"\"/><a:cs typeface=\"\"/>";
        return $"{Head}<a:theme xmlns:a=\"http://schemas.openxmlformats.org/drawingml/2006/main\" name=\"Rookery\">"
            + "<a:themeElements><a:clrScheme name=\"Rookery\">"
            + Colour("dk1", "1B1B1B") + Colour("lt1", "FFFFFF") + Colour("dk2", "555555") + Colour("lt2", "F4F4F2")
            + Colour("accent1", "0072B2") + Colour("accent2", "E69F00") + Colour("accent3", "009E73")
            + Colour("accent4", "F0E442") + Colour("accent5", "CC79A7") + Colour("accent6", "D55E00")
            + Colour("hlink", "005E93") + Colour("folHlink", "555555")
            + $"</a:clrScheme><a:fontScheme name=\"Rookery\"><a:majorFont>{font}</a:majorFont><a:minorFont>{font}"
            + $"</a:minorFont></a:fontScheme><a:fmtScheme name=\"Rookery\"><a:fillStyleLst>{fill}{fill}{fill}"
            + $"</a:fillStyleLst><a:lnStyleLst>{line}{line}{line}</a:lnStyleLst><a:effectStyleLst>{effect}{effect}"
            + $"{effect}</a:effectStyleLst><a:bgFillStyleLst>{fill}{fill}{fill}</a:bgFillStyleLst></a:fmtScheme>"
            + "</a:themeElements></a:theme>";
    }

    private static string Slide(string shapes) =>
        $"{Head}<p:sld {Spaces}><p:cSld><p:spTree>{NoGroup}{shapes}</p:spTree></p:cSld>"
        + "<p:clrMapOvr><a:masterClrMapping/></p:clrMapOvr></p:sld>";

    private static string TitlePlace(string text, bool hasText) => Shape(
        2, "Title", "<p:ph type=\"title\"/>", Box(Margin, 100_000, Width - (2 * Margin), TitleHeight - 120_000),
        hasText ? text : "", 0);

    private static string Shape(int id, string name, string place, string box, string text, int size)
    {
        string lines = string.Concat(text.Split('\n').Select(line => Paragraph(line, size)));
        string kind = place.Length > 0
            ? "<p:cNvSpPr><a:spLocks noGrp=\"1\"/></p:cNvSpPr>"
            : "<p:cNvSpPr txBox=\"1\"/>";
        string shape = box.Length > 0 ? box + "<a:prstGeom prst=\"rect\"><a:avLst/></a:prstGeom>" : "";
        return $"<p:sp><p:nvSpPr><p:cNvPr id=\"{id.ToString(CultureInfo.InvariantCulture)}\" name=\"{name}\"/>{kind}"
            + $"<p:nvPr>{place}</p:nvPr></p:nvSpPr><p:spPr>{shape}</p:spPr><p:txBody><a:bodyPr anchor=\"ctr\">"
            + $"<a:normAutofit/></a:bodyPr><a:lstStyle/>{lines}</p:txBody></p:sp>";
    }

    private static string Paragraph(string line, int size)
    {
        string properties = size > 0
            ? string.Create(CultureInfo.InvariantCulture, $"<a:rPr lang=\"en-GB\" sz=\"{size}\"/>")
            : "<a:rPr lang=\"en-GB\"/>";
        return line.Length == 0
            ? "<a:p><a:endParaRPr lang=\"en-GB\"/></a:p>"
            : $"<a:p><a:r>{properties}<a:t>{Escape(line)}</a:t></a:r></a:p>";
    }

    private static string Box(long x, long y, long width, long height) =>
        Text($"<a:xfrm><a:off x=\"{x}\" y=\"{y}\"/><a:ext cx=\"{width}\" cy=\"{height}\"/></a:xfrm>");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    // What XML cannot carry becomes a sign that says so.
    private static string Escape(string text) => SecurityElement.Escape(string.Concat(text.Select(c =>
        (c < ' ' && c is not '\t') || c is '\uFFFE' or '\uFFFF' || char.IsSurrogate(c) ? '\uFFFD' : c)))!;
}
