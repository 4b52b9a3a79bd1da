using System.Collections.Immutable;
using System.Globalization;
using Rookery.Checking.Witnesses;

namespace Rookery.Drawing;

/// <summary>Paints one moment of an execution.</summary>
internal sealed class WitnessStepPainter(
    Sheet sheet, Witness witness, int steps, ImmutableArray<string> code, int columns)
{
    private const int LinesAround = 2;

    private readonly double _size = sheet.SmallSize;
    private readonly Picture _now = WitnessTable.Before(witness, steps);
    private readonly Picture _before = WitnessTable.Before(witness, Math.Max(0, steps - 1));

    public void Paint()
    {
        double row = _size * 1.45;
        Area memory = sheet.TakeBottom(row * 4.2);
        int rows = (witness.Threads.Length + columns - 1) / columns;
        double width = sheet.Room.Width / columns, height = sheet.Room.Height / rows;
        for (int thread = 0; thread < witness.Threads.Length; thread++)
        {
            double x = sheet.Room.X + (thread % columns * width), y = sheet.Room.Y + (thread / columns * height);
            PaintThread(thread, new(x, y, width - (_size * 0.7), height - (_size * 0.5)));
        }

        PaintMemory(memory, row);
    }

    private void PaintThread(int thread, Area panel)
    {
        ThreadPicture now = _now.Threads[thread];
        double row = panel.Height / (WitnessStepView.RowsOfThread + 0.5), inner = panel.X + (_size * 0.9);
        double size = Math.Min(_size, row * 0.75), room = panel.Right - inner - (size * 0.4);
        bool hasMoved = steps > 0 && witness.Steps[steps - 1].Thread == thread;
        double BaseOf(int at) => panel.Y + (row * (at + 0.85));
        var marks = new List<Mark>
        {
            new Box(panel, Role.Panel) { Edge = hasMoved ? Role.Emphasis : Role.None, EdgeWidth = 3 },
            new Box(new(panel.X, panel.Y, size * 0.45, panel.Height), Ink.Worker(thread)),
        };
        string head = now.Operation.Length == 0 ? sheet.Words.HasEnded
            : now.IsInside ? sheet.Words.In(now.Operation) : sheet.Words.Next(now.Operation);
        marks.Add(new Text(
            inner, BaseOf(0), TextFit.Shorten($"{witness.Threads[thread]}, {head}", size, room, true), size)
        {
            IsBold = true,
        });
        PaintCode(marks, now, new(inner, panel.Y + row, room, row * 5), row, size);
        string own = string.Join(", ", now.Locals.Select(one =>
            FormattableString.Invariant($"{one.Name} = {one.Value}")));
        if (own.Length > 0)
            marks.Add(new Text(inner, BaseOf(6), TextFit.Shorten(own, size, room), size));
        PaintOwnMemory(marks, now, new(inner, panel.Y + (row * 7), room, row), size);
        sheet.AddGroup(
            FormattableString.Invariant($"thread-{thread}"), marks, sheet.Words.Thread(witness.Threads[thread]));
    }

    private void PaintCode(List<Mark> marks, ThreadPicture now, Area room, double row, double size)
    {
        if (now.Line <= 0)
            return;
        double number = size * 1.9;
        for (int at = -LinesAround; at <= LinesAround; at++)
        {
            int line = now.Line + at;
            string text = TextOf(line);
            double top = room.Y + ((at + LinesAround) * row);
            if (at == 0)
                marks.Add(new Box(new(room.X - 2, top, room.Width + 2, row), Role.Paper) { Edge = Role.Text });
            if (text.Length == 0 || !IsOfOperation(line, now.Line))
                continue;
            double indent = Math.Min(8, (text.Length - text.TrimStart().Length) / 2) * size * 0.5;
            Ink ink = at == 0 ? Role.Text : Role.QuietText;
            marks.Add(new Text(room.X + number - (size * 0.4), top + (row * 0.72), NumberText.Whole(line), size * 0.9)
            {
                Anchor = Anchor.End,
                Ink = Role.QuietText,
            });
            double x = room.X + number + indent;
            marks.Add(new Text(
                x, top + (row * 0.72), TextFit.Shorten(text.Trim(), size, room.X + room.Width - x, at == 0), size)
            {
                Ink = ink,
                IsBold = at == 0,
            });
        }
    }

    private string TextOf(int line)
    {
        if (line < 1 || line > code.Length)
            return "";
        string text = code[line - 1];
        int comment = text.IndexOf('#', StringComparison.Ordinal);
        return (comment < 0 ? text : text[..comment]).TrimEnd();
    }

    // A head without indentation ends what belongs to an operation.
    private bool IsOfOperation(int line, int next)
    {
        for (int at = Math.Min(line, next) + 1; at <= Math.Max(line, next); at++)
        {
            string text = TextOf(at);
            if (text.Length > 0 && text[0] != ' ')
                return false;
        }

        return line >= next || TextOf(line).Length > 0;
    }

    private void PaintOwnMemory(List<Mark> marks, ThreadPicture now, Area room, double size)
    {
        if (now.Buffer.Length > 0)
        {
            marks.Add(new Box(room, Role.Waiting));
            string waits = sheet.Words.Waits(WitnessTable.TextOf(now.Buffer));
            marks.Add(new Text(
                room.X + (size * 0.4), room.Y + (room.Height * 0.72),
                TextFit.Shorten(waits, size, room.Width - size), size));
            return;
        }

        if (now.Seen.IsEmpty)
            return;
        var choices = Enumerable.Range(0, _now.Places.Length)
            .Where(place => _now.Places[place].Writes.Length - now.Seen[place] > 1)
            .Select(place => _now.Places[place].Name + ": " + string.Join(
                sheet.Words.OrMark, _now.Places[place].Writes.Skip(now.Seen[place]).Select(NumberOf)));
        string text = string.Join(", ", choices);
        if (text.Length > 0)
        {
            marks.Add(new Text(
                room.X, room.Y + (room.Height * 0.72),
                TextFit.Shorten(sheet.Words.MayRead(text), size, room.Width), size)
            {
                Ink = Role.QuietText,
            });
        }
    }

    private void PaintMemory(Area room, double row)
    {
        ImmutableArray<int> places = WitnessTable.Of(witness, int.MaxValue).Places;
        double width = Math.Min(room.Width / Math.Max(1, places.Length), _size * 8);
        var marks = new List<Mark>
        {
            new Text(
                room.X, room.Y + (row * 0.9), places.IsEmpty ? sheet.Words.MemoryStays : sheet.Words.Memory, _size)
            {
                Ink = Role.QuietText,
            },
        };
        for (int i = 0; i < places.Length; i++)
        {
            PlacePicture place = _now.Places[places[i]];
            bool isNew = steps > 0 && !place.Writes.SequenceEqual(_before.Places[places[i]].Writes);
            var cell = new Area(room.X + (i * width), room.Y + (row * 2.4), width - (_size * 0.4), row * 1.3);
            marks.Add(new Text(
                cell.X, cell.Y - (row * 0.35), TextFit.Shorten(place.Name, _size, width), _size));
            marks.Add(new Box(cell, Role.Paper)
            {
                Edge = isNew ? Role.Emphasis : Role.Axis,
                EdgeWidth = isNew ? 4 : 1.5,
            });
            marks.Add(new Text(
                cell.MiddleX, cell.Y + (row * 0.95),
                TextFit.Shorten(WitnessTable.TextOf(place), _size, cell.Width - 4, isNew), _size)
            {
                Anchor = Anchor.Middle,
                IsBold = isNew,
            });
        }

        sheet.AddGroup("memory", marks, sheet.Words.Memory);
    }

    private static string NumberOf(long value) => value.ToString(CultureInfo.InvariantCulture);
}
