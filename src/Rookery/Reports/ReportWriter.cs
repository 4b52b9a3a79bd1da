using Rookery.Terminal;
using Spectre.Console;

namespace Rookery.Reports;

/// <summary>Shows a report on a console: frames and colour on a terminal, aligned text elsewhere.</summary>
internal static class ReportWriter
{
    /// <summary>The longest line of running text, as books have it.</summary>
    private const int LineMax = 100;

    /// <summary>Shows all of it.</summary>
    public static void Write(AppConsole console, Report report)
    {
        WriteSentences(console, report.Sentences);
        foreach (ReportTable table in report.Tables)
        {
            if (table.Rows.Length == 0)
                continue;
            console.Out.WriteLine();
            WriteTable(console, table);
        }
    }

    /// <summary>Shows sentences as one paragraph, broken into lines between words.</summary>
    public static void WriteSentences(AppConsole console, IEnumerable<string> sentences)
    {
        int width = Math.Min(console.Width, LineMax);
        string line = "";
        foreach (string word in string.Join(' ', sentences).Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > width)
            {
                console.Out.WriteLine(line);
                line = "";
            }

            line = line.Length == 0 ? word : $"{line} {word}";
        }

        if (line.Length > 0)
            console.Out.WriteLine(line);
    }

    private static void WriteTable(AppConsole console, ReportTable table)
    {
        if (!console.IsOutTerminal)
        {
            WritePlain(console.Out, table);
            return;
        }

        var framed = new Table { Border = TableBorder.Rounded, BorderStyle = new Style(Color.Grey) };
        for (int i = 0; i < table.Headings.Length; i++)
        {
            var column = new TableColumn(new Text(table.Headings[i], new Style(decoration: Decoration.Bold)));
            framed.AddColumn(table.Numbers.Contains(i) ? column.RightAligned() : column);
        }

        foreach (var row in table.Rows)
            framed.AddRow(row.Select(cell => new Text(cell.Text, StyleOf(cell.Tone))));
        console.Rich.Write(framed);
    }

    private static Style StyleOf(Tone tone) => tone switch
    {
        Tone.Plain => Style.Plain,
        Tone.Good => new Style(Color.Green),
        Tone.Bad => new Style(Color.Red, decoration: Decoration.Bold),
        Tone.Quiet => new Style(Color.Grey),
    };

    private static void WritePlain(TextWriter output, ReportTable table)
    {
        int[] widths = [.. table.Headings.Select((heading, i) =>
            Math.Max(heading.Length, table.Rows.Max(row => row[i].Text.Length)))];
        WriteRow(output, table, widths, i => table.Headings[i]);
        foreach (var row in table.Rows)
            WriteRow(output, table, widths, i => row[i].Text);
    }

    private static void WriteRow(TextWriter output, ReportTable table, int[] widths, Func<int, string> textOf)
    {
        IEnumerable<string> cells = widths.Select((width, i) =>
            table.Numbers.Contains(i) ? textOf(i).PadLeft(width) : textOf(i).PadRight(width));
        output.WriteLine(string.Join("  ", cells).TrimEnd());
    }
}
