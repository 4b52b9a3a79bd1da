using System.Collections.Immutable;
using System.Globalization;
using Rookery.Traces;

namespace Rookery.Drawing;

/// <summary>Who stole from whom: a row for each thief, a column for each victim, numbers, shades and totals.</summary>
public static class StealMatrixView
{
    private const double CellWidthMax = 200;
    private const double CellHeightMax = 116;

    /// <summary>Draws a trace.</summary>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of its range.</exception>
    public static Scene Draw(Trace trace, StealMatrixOptions? options = null)
    {
        var asked = options ?? new();
        ArgumentOutOfRangeException.ThrowIfLessThan(asked.RowsMax, 2);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(asked.RowsMax, 32);
        var counts = StealCounts.Of(trace, asked.RowsMax);
        var words = asked.Frame.Words;
        var title = words.MatrixTitle(TraceSize.NameOf(trace, words));
        var sheet = new Sheet(asked.Frame, title, SubtitleOf(counts, words));
        if (counts.Total == 0)
            sheet.Nothing(counts.Workers == 1 ? words.NobodyToStealFrom : words.NothingStolen);
        else
            DrawMatrix(sheet, counts);
        return sheet.Build(DescriptionOf(counts, words));
    }

    private static string SubtitleOf(StealCounts counts, DrawingWords words) => words.MatrixSubtitle(
        counts.Total,
        counts.Workers,
        counts.Workers < 2 || counts.Total == 0
            ? null
            : counts.Total / ((double)counts.Workers * (counts.Workers - 1)));

    private static string DescriptionOf(StealCounts counts, DrawingWords words)
    {
        if (counts.Total == 0)
            return words.NothingStolen;
        var rows = Enumerable.Range(0, counts.Groups).Select(group =>
            words.StoleAndLost(NameOf(counts, group, words), counts.ThiefTotal(group), counts.VictimTotal(group)));
        return words.MatrixDescription(SubtitleOf(counts, words), string.Join("; ", rows));
    }

    private static void DrawMatrix(Sheet sheet, StealCounts counts)
    {
        if (counts.InGroup > 1)
        {
            sheet.Note(sheet.Words.GroupsNote(counts.Workers, counts.Groups, counts.InGroup));
        }

        var small = sheet.SmallSize;
        var names = small * 1.2 + Enumerable.Range(0, counts.Groups).Max(group =>
            FontWidths.Measure(RowName(counts, group, sheet.Words), small) * TextFit.Reserve);
        DrawShades(sheet, counts);
        sheet.TakeTop(small * 3.2);
        sheet.TakeLeft(names);
        sheet.TakeRight(small * 1.2);
        sheet.TakeBottom(small * 0.4);
        // One row and column more for the totals, a little apart.
        var width = Math.Min(CellWidthMax, (sheet.Room.Width - (small * 0.5)) / (counts.Groups + 1));
        var height = Math.Min(CellHeightMax, (sheet.Room.Height - (small * 0.5)) / (counts.Groups + 1));
        var grid = new Area(sheet.Room.X, sheet.Room.Y, width * counts.Groups, height * counts.Groups);
        DrawCells(sheet, counts, grid);
        DrawNames(sheet, counts, grid);
        DrawTotals(sheet, counts, grid);
    }

    private static void DrawCells(Sheet sheet, StealCounts counts, Area grid)
    {
        var (width, height) = (grid.Width / counts.Groups, grid.Height / counts.Groups);
        var marks = ImmutableArray.CreateBuilder<Mark>();
        marks.Add(new Box(grid, Ink.Scale(0)) { Edge = Role.Grid });
        for (var thief = 0; thief < counts.Groups; thief++)
        {
            for (var victim = 0; victim < counts.Groups; victim++)
            {
                var cell = new Area(grid.X + (victim * width), grid.Y + (thief * height), width, height);
                if (thief == victim && counts.InGroup == 1)
                    marks.Add(new Box(cell.Shrunk(1), Role.Asleep));
                else if (counts.Counts[thief, victim] is > 0 and var count)
                    marks.AddRange(CellMarks(sheet, cell.Shrunk(1), count, counts.Largest));
            }
        }

        sheet.AddGroup("cells", marks);
    }

    private static IEnumerable<Mark> CellMarks(Sheet sheet, Area cell, long count, long largest)
    {
        // The least that is not nothing has a shade of its own.
        var ink = Ink.Scale(0.1 + (0.9 * count / largest));
        yield return new Box(cell, ink);
        var text = sheet.Words.Short(count);
        var size = TextSizeFor(sheet, cell, text);
        if (size > 0)
        {
            yield return new Text(cell.MiddleX, cell.MiddleY + (size * 0.35), text, size)
            {
                Over = ink,
                Anchor = Anchor.Middle,
            };
        }
    }

    private static double TextSizeFor(Sheet sheet, Area cell, string text)
    {
        foreach (var size in new[] { sheet.TextSize * 1.3, sheet.TextSize, sheet.SmallSize })
        {
            if (cell.Height >= size * (size > sheet.TextSize ? 2 : 0.9) && TextFit.Fits(text, size, cell.Width))
                return size;
        }

        return 0;
    }

    private static void DrawNames(Sheet sheet, StealCounts counts, Area grid)
    {
        var small = sheet.SmallSize;
        var (width, height) = (grid.Width / counts.Groups, grid.Height / counts.Groups);
        var marks = new List<Mark>
        {
            new Text(grid.X - (small * 0.8), grid.Y - (small * 0.7), sheet.Words.Thief, small)
            {
                Ink = Role.QuietText,
                Anchor = Anchor.End,
            },
            new Text(grid.X, grid.Y - (small * 2.1), sheet.Words.Victim, small) { Ink = Role.QuietText },
        };
        var columnWidth = Enumerable.Range(0, counts.Groups).Max(group =>
            FontWidths.Measure(ColumnName(counts, group), small) * TextFit.Reserve) + (small * 0.4);
        var rowStride = (int)Math.Ceiling(small / height);
        var columnStride = (int)Math.Ceiling(columnWidth / width);
        for (var group = 0; group < counts.Groups; group++)
        {
            var middleY = grid.Y + ((group + 0.5) * height);
            if (group % rowStride == 0)
            {
                var name = RowName(counts, group, sheet.Words);
                marks.Add(new Text(grid.X - (small * 0.8), middleY + (small * 0.35), name, small)
                {
                    Anchor = Anchor.End,
                });
            }

            if (group % columnStride == 0)
            {
                var middleX = grid.X + ((group + 0.5) * width);
                marks.Add(new Text(middleX, grid.Y - (small * 0.7), ColumnName(counts, group), small)
                {
                    Anchor = Anchor.Middle,
                });
            }
        }

        sheet.AddGroup("names", marks);
    }

    private static void DrawTotals(Sheet sheet, StealCounts counts, Area grid)
    {
        var small = sheet.SmallSize;
        var (width, height) = (grid.Width / counts.Groups, grid.Height / counts.Groups);
        var gap = small * 0.5;
        var marks = new List<Mark>
        {
            new Text(grid.X - (small * 0.8), grid.Bottom + gap + (height / 2) + (small * 0.35), sheet.Words.Lost, small)
            {
                Ink = Role.QuietText,
                Anchor = Anchor.End,
            },
            new Text(grid.Right + gap + (width / 2), grid.Y - (small * 0.7), sheet.Words.Stole, small)
            {
                Ink = Role.QuietText,
                Anchor = Anchor.Middle,
            },
        };
        for (var group = 0; group < counts.Groups; group++)
        {
            var right = new Area(grid.Right + gap, grid.Y + (group * height), width, height);
            var below = new Area(grid.X + (group * width), grid.Bottom + gap, width, height);
            marks.AddRange(TotalMarks(sheet, right, counts.ThiefTotal(group)));
            marks.AddRange(TotalMarks(sheet, below, counts.VictimTotal(group)));
        }

        marks.AddRange(TotalMarks(sheet, new(grid.Right + gap, grid.Bottom + gap, width, height), counts.Total));
        sheet.AddGroup("totals", marks);
    }

    private static IEnumerable<Mark> TotalMarks(Sheet sheet, Area cell, long count)
    {
        var text = sheet.Words.Short(count);
        if (TextSizeFor(sheet, cell, text) is > 0 and var size)
        {
            yield return new Text(cell.MiddleX, cell.MiddleY + (size * 0.35), text, size)
            {
                Anchor = Anchor.Middle,
                IsBold = size <= sheet.SmallSize && TextFit.Fits(text, size, cell.Width, true),
            };
        }
    }

    private static void DrawShades(Sheet sheet, StealCounts counts)
    {
        var small = sheet.SmallSize;
        var strip = sheet.TakeBottom(small * 1.8);
        var swatch = new Area(strip.X, strip.Y + (small * 0.4), small * 2, small);
        var marks = new List<Mark>();
        for (var i = 0; i < 5; i++)
            marks.Add(new Box(swatch with { X = strip.X + (i * swatch.Width) }, Ink.Scale(0.1 + (0.9 * i / 4))));
        var x = strip.X + (5 * swatch.Width) + (small * 0.6);
        var text = sheet.Words.StealScale(counts.Largest);
        marks.Add(new Text(x, swatch.Bottom - (small * 0.15), text, small));
        sheet.AddGroup("legend", marks);
    }

    private static string RowName(StealCounts counts, int group, DrawingWords words) =>
        counts.InGroup == 1 ? words.Worker(group) : ColumnName(counts, group);

    private static string NameOf(StealCounts counts, int group, DrawingWords words) =>
        counts.InGroup == 1 ? words.Worker(group) : words.Workers(ColumnName(counts, group));

    private static string ColumnName(StealCounts counts, int group)
    {
        var first = group * counts.InGroup;
        var last = Math.Min(first + counts.InGroup, counts.Workers) - 1;
        return first == last
            ? first.ToString(CultureInfo.InvariantCulture)
            : string.Create(CultureInfo.InvariantCulture, $"{first}–{last}");
    }
}
