using System.Collections.Immutable;
using System.Globalization;

namespace Rookery.Drawing;

/// <summary>Samples with their meaning, in rows.</summary>
internal static class Legend
{
    private const double SwatchWidth = 34;

    /// <summary>Draws a legend from the bottom of the free room upwards; takes the room.</summary>
    public static void DrawAtBottom(Sheet sheet, IReadOnlyList<LegendEntry> entries)
    {
        var rows = Rows(sheet, entries);
        var pitch = sheet.SmallSize * 1.75;
        var strip = sheet.TakeBottom((rows.Count * pitch) + (sheet.SmallSize * 0.4));
        DrawRows(sheet, rows, strip.Bottom - (rows.Count * pitch), pitch);
    }

    private static void DrawRows(Sheet sheet, List<List<LegendEntry>> rows, double top, double pitch)
    {
        var marks = ImmutableArray.CreateBuilder<Mark>();
        foreach (var row in rows)
        {
            var x = sheet.Room.X;
            foreach (var entry in row)
            {
                DrawEntry(sheet, marks, entry, new(x, top, EntryWidth(sheet, entry), pitch));
                x += EntryWidth(sheet, entry);
            }

            top += pitch;
        }

        sheet.AddGroup("legend", marks);
    }

    private static void DrawEntry(Sheet sheet, ImmutableArray<Mark>.Builder marks, LegendEntry entry, Area place)
    {
        var size = sheet.SmallSize;
        var swatch = new Area(place.X, place.Y + (place.Height * 0.18), SwatchWidth * sheet.Scale, place.Height * 0.64);
        if (entry.Sample is { } sample)
            marks.AddRange(sample(swatch));
        var x = swatch.X;
        foreach (var fill in entry.Fills)
        {
            var box = swatch with { X = x };
            marks.Add(new Box(box, fill) { Edge = Role.Axis, EdgeWidth = 1 });
            if (fill.Role == Role.Worker)
                marks.Add(NumberOn(box, fill, size));
            x += box.Width;
        }

        var room = place.Right - size - TextX(sheet, entry, place.X);
        var words = TextFit.Shorten(entry.Meaning, size, room * TextFit.Reserve);
        marks.Add(new Text(TextX(sheet, entry, place.X), swatch.MiddleY + (size * 0.35), words, size));
    }

    private static Text NumberOn(Area box, Ink fill, double size) =>
        new(box.MiddleX, box.MiddleY + (size * 0.35), fill.Number.ToString(CultureInfo.InvariantCulture), size)
        {
            Over = fill,
            Anchor = Anchor.Middle,
            IsBold = true,
        };

    private static List<List<LegendEntry>> Rows(Sheet sheet, IReadOnlyList<LegendEntry> entries)
    {
        var rows = new List<List<LegendEntry>> { new() };
        var used = 0.0;
        foreach (var entry in entries)
        {
            var width = EntryWidth(sheet, entry);
            if (used > 0 && used + width > sheet.Room.Width + sheet.SmallSize)
            {
                rows.Add([]);
                used = 0;
            }

            rows[^1].Add(entry);
            used += width;
        }

        return rows;
    }

    private static double EntryWidth(Sheet sheet, LegendEntry entry) => Math.Min(
        TextX(sheet, entry, 0) + (FontWidths.Measure(entry.Meaning, sheet.SmallSize) * TextFit.Reserve)
            + (sheet.SmallSize * 1.6),
        sheet.Room.Width + sheet.SmallSize);

    private static double TextX(Sheet sheet, LegendEntry entry, double x) =>
        x + (SwatchWidth * sheet.Scale * Math.Max(1, entry.Fills.Length)) + (sheet.SmallSize * 0.5);
}
