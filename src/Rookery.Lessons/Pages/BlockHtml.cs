using System.Collections.Immutable;
using System.Globalization;
using Rookery.Lessons.Blocks;
using Rookery.Lessons.Labs;

namespace Rookery.Lessons.Pages;

/// <summary>A block in a page: player, figures, tables and what they were made from.</summary>
/// <remarks>
/// Without script, and in print, the moments stand there as pictures. The script takes the place of the first picture
/// by the player.
/// </remarks>
internal sealed class BlockHtml
{
    private readonly PageContext _page;
    private readonly LessonBlock _block;
    private readonly BlockResult _result;
    private readonly string _id;
    private readonly Html _html = new();

    private BlockHtml(PageContext page, LessonBlock block, BlockResult result)
    {
        (_page, _block, _result) = (page, block, result);
        _id = PageContext.IdOf(block);
    }

    /// <summary>The block as HTML.</summary>
    public static string Of(PageContext page, LessonBlock block, BlockResult result)
    {
        var writer = new BlockHtml(page, block, result);
        writer.Write();
        return writer._html.ToString();
    }

    private void Write()
    {
        string number = string.Create(CultureInfo.InvariantCulture, $"{Title(_block.Word)} {_block.Place.Number}");
        _html.Line($"<section class=\"rk-block\" id=\"{_id}\" aria-label=\"{number}\">");
        _html.Line($"<header><span class=\"rk-number\">{number}</span>");
        if (_block.Caption.Length > 0)
            _html.Line($"<p class=\"rk-caption\">{_block.Caption}</p>");
        _html.Raw("</header>\n");
        if (_result.Verdict.Length > 0)
            _html.Line($"<p class=\"rk-verdict\"><strong>{_result.Answer}</strong> {_result.Verdict}</p>");
        WriteMoments();
        foreach (BlockFigure figure in _result.Figures.Where(figure => figure.Step < 0))
            WriteFigure(figure, "rk-whole");
        foreach (BlockTable table in _result.Tables)
            WriteTable(table);
        WriteFooter();
        _html.Raw("</section>\n");
    }

    private void WriteMoments()
    {
        BlockFigure[] moments = [.. _result.Figures.Where(figure => figure.Step >= 0)];
        if (_result.Player is { } player)
            WritePlayer(player, moments);
        WriteListing();
        if (moments.Length == 0)
            return;
        string kind = moments.Length == 1 ? "rk-moments rk-one" : "rk-moments rk-strip";
        _html.Line($"<div class=\"{kind}\">");
        foreach (BlockFigure moment in moments)
            WriteFigure(moment, "rk-moment");
        _html.Raw("</div>\n");
    }

    // Hidden until the script finds it: without script there is nothing to press.
    private void WritePlayer(BlockPlayer player, BlockFigure[] moments)
    {
        string stops = string.Join('|', moments.Select(one =>
            string.Create(CultureInfo.InvariantCulture, $"{one.Step} {one.Moment}")));
        _html.Line($"<div class=\"rk-player\" data-id=\"{_id}\" data-files=\"{_page.FolderOf}/{_id}\"");
        string program = _result.Listing.Length > 0 ? _id + "-program" : "";
        _html.Line($" data-stops=\"{stops}\" data-program=\"{program}\" hidden>");
        _html.Raw("</div>\n");
        if (player.IsWindow)
        {
            FormattableString said = $"This page carries steps {player.First} to {player.Last} of {player.All}.";
            _html.Line($"<p class=\"rk-window\">{said.ToString(CultureInfo.InvariantCulture)}</p>");
        }
    }

    private void WriteFigure(BlockFigure figure, string kind)
    {
        string file = $"{_page.FiguresOf}/{PageContext.FigureNameOf(_block, figure)}";
        string ids = $"{_id}-{figure.Id}-";
        _html.Line($"<figure class=\"{kind}\" data-step=\"{figure.Step}\" id=\"{_id}-{figure.Id}\">");
        _html.Raw("<div class=\"rk-wide\">\n").Raw(
            figure.Wide.Replace(BlockFigure.IdPrefix, ids + "w-", StringComparison.Ordinal));
        _html.Raw("</div>\n<div class=\"rk-narrow\">\n");
        _html.Raw(figure.Narrow.Replace(BlockFigure.IdPrefix, ids + "n-", StringComparison.Ordinal)).Raw("</div>\n");
        _html.Raw("<figcaption>");
        if (figure.Moment.Length > 0)
            _html.Line($"<strong>{Title(figure.Moment)}.</strong> {figure.Narration}");
        _html.Line($"<span class=\"rk-files\"><a href=\"{file}.svg\">SVG</a> <a href=\"{file}.png\">PNG</a>");
        _html.Line($" <a href=\"{file}.pdf\">PDF</a></span></figcaption></figure>");
    }

    private void WriteListing()
    {
        if (_result.Listing.Length == 0)
            return;
        _html.Line($"<ol class=\"rk-listing\" id=\"{_id}-program\" aria-label=\"The program\" tabindex=\"0\">");
        foreach (string line in _result.Listing.ReplaceLineEndings("\n").TrimEnd('\n').Split('\n'))
            _html.Line($"<li><code>{line}</code></li>");
        _html.Raw("</ol>\n");
    }

    private void WriteTable(BlockTable table)
    {
        _html.Line($"<div class=\"rk-scroll\" tabindex=\"0\"><table><caption>{table.Caption}</caption><thead><tr>");
        for (int i = 0; i < table.Headers.Length; i++)
        {
            // A head without words is no head to a screen reader.
            string element = table.Headers[i].Length == 0 ? "td" : "th";
            WriteCell(element, table.Headers[i], table.NumberColumns.Contains(i));
        }

        _html.Raw("</tr></thead><tbody>\n");
        foreach (ImmutableArray<string> row in table.Rows)
        {
            _html.Raw("<tr>");
            for (int i = 0; i < row.Length; i++)
                WriteCell("td", row[i], table.NumberColumns.Contains(i));
            _html.Raw("</tr>\n");
        }

        _html.Raw("</tbody></table></div>\n");
    }

    private void WriteCell(string element, string text, bool isNumber)
    {
        string scope = element == "th" ? " scope=\"col\"" : "";
        _html.Raw($"<{element}{scope}{(isNumber ? " class=\"rk-right\"" : "")}>{Html.Escape(text)}</{element}>");
    }

    private void WriteFooter()
    {
        if (_result.MadeFrom.Length > 0)
            _html.Line($"<p class=\"rk-made\">Computed: {_result.MadeFrom}.</p>");
        if (!_page.HasLab || _block is not IStartsLab)
            return;
        string address = _page.LabAddressOf(_block, _result.FirstStep);
        _html.Line($"<p class=\"rk-to-lab\"><a class=\"rk-lab\" href=\"{address}\">Open in the lab</a></p>");
    }

    private static string Title(string word) =>
        word.Length == 0 ? word : char.ToUpperInvariant(word[0]) + word[1..];
}
