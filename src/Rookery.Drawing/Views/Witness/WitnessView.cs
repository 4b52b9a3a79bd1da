using Rookery.Checking.Witnesses;

namespace Rookery.Drawing;

/// <summary>
/// An execution step by step: a lane for each thread with its operations as bars, and what memory and store buffers
/// hold.
/// </summary>
/// <remarks>Time runs downwards, so that every step has a line of text.</remarks>
public static class WitnessView
{
    private const double RowMin = 15;
    private const double NumberWidth = 3;

    /// <summary>Draws an execution.</summary>
    public static Scene Draw(Witness witness, WitnessOptions? options = null)
    {
        var asked = options ?? new();
        DrawingWords words = asked.Frame.Words;
        string why = witness.Finding is { } finding ? words.Checker.Why(finding) : "";
        var sheet = new Sheet(asked.Frame, asked.Title.Length > 0 ? asked.Title : words.AnExecution, why);
        if (witness.Steps.IsEmpty)
        {
            sheet.Nothing(words.FailsAtOnce);
            return sheet.Build(why);
        }

        var table = WitnessTable.Of(witness, (int)((sheet.Room.Height * 0.82) / RowMin));
        if (table.FirstStep > 0)
            sheet.Note(words.FirstStepsLeftOut(table.FirstStep));
        if (table.HiddenPlaces > 0)
            sheet.Note(words.MorePlacesChange(table.HiddenPlaces));
        new WitnessPainter(sheet, witness, table, asked).Paint();
        return sheet.Build($"{string.Join(" ", witness.Steps.Select(words.Checker.Sentence))} {why}");
    }

    /// <summary>Paints the columns from left to right.</summary>
    private sealed class WitnessPainter
    {
        private readonly Sheet _sheet;
        private readonly Witness _witness;
        private readonly WitnessTable _table;
        private readonly WitnessOptions _options;
        private readonly DrawingWords _words;
        private readonly int _rows;
        private readonly double _row;
        private readonly double _size;
        private readonly double _top;

        public WitnessPainter(Sheet sheet, Witness witness, WitnessTable table, WitnessOptions options)
        {
            (_sheet, _witness, _table, _options) = (sheet, witness, table, options);
            _words = sheet.Words;
            _rows = witness.Steps.Length - table.FirstStep;
            double head = sheet.SmallSize * 2;
            _row = Math.Min(sheet.SmallSize * 1.7, (sheet.Room.Height - head) / _rows);
            _size = Math.Min(sheet.SmallSize, _row * 0.8);
            _top = sheet.Room.Y + head;
        }

        public void Paint()
        {
            Area room = _sheet.Room;
            double numbers = _size * NumberWidth;
            double place = _table.Places.Select(at => WidthOf(at)).DefaultIfEmpty(0).Max(), buffer = _size * 14;
            double right = (_table.Places.Length * place) + (_table.Buffers.Length * buffer);
            double lanes = Math.Max(room.Width * 0.5, room.Width - numbers - right - _size);
            double shrink = Math.Min(1, (room.Width - numbers - lanes - _size) / Math.Max(1, right));
            PaintNumbers(room.X);
            double x = room.X + numbers;
            double[] widths = LaneWidths(lanes);
            for (int thread = 0; thread < _witness.Threads.Length; thread++)
            {
                PaintLane(thread, new(x, room.Y, widths[thread] - _size, room.Height));
                x += widths[thread];
            }

            x = room.X + numbers + lanes;
            foreach (int thread in _table.Buffers)
            {
                PaintBuffer(thread, x, buffer * shrink);
                x += buffer * shrink;
            }

            foreach (int at in _table.Places)
            {
                PaintPlace(at, x, place * shrink);
                x += place * shrink;
            }

            PaintRows();
        }

        // All alike where their texts fit; else who does more has more, and nobody less than half of its part.
        private double[] LaneWidths(double lanes)
        {
            int count = _witness.Threads.Length;
            double alike = lanes / count;
            double[] wished =
            [
                .. Enumerable.Range(0, count).Select(thread => _size * 2.3 + (Shown()
                    .Where(step => _witness.Steps[step].Thread == thread)
                    .Select(step => FontWidths.Measure(TextOf(step), _size)).DefaultIfEmpty(0).Max()
                        * TextFit.Reserve)),
            ];
            double most = wished.Sum();
            return wished.Max() <= alike
                ? [.. wished.Select(_ => alike)]
                : [.. wished.Select(wish => (alike + (lanes * wish / most)) / 2)];
        }

        // On top of everything, so that a step is pointed at wherever its row is; open, so that all shows through.
        private void PaintRows()
        {
            foreach (int step in Shown().Where(step => _options.HasTargets || step == _options.Current))
            {
                var place = new Area(_sheet.Room.X, TopOf(step), _sheet.Room.Width, _row);
                var row = new Box(place, default)
                {
                    Edge = step == _options.Current ? Role.Emphasis : default,
                    EdgeWidth = 2.5,
                };
                _sheet.AddGroup(
                    FormattableString.Invariant($"row-{step}"), [row], _words.Checker.Sentence(_witness.Steps[step]),
                    _options.HasTargets ? FormattableString.Invariant($"row={step}") : "");
            }
        }

        private double WidthOf(int place) => (_size * 1.2) + FontWidths.Measure(
            _witness.Start.Places[place].Name, _sheet.SmallSize) * TextFit.Reserve;

        private double TopOf(int step) => _top + ((step - _table.FirstStep) * _row);

        private double BaseOf(int step) => TopOf(step) + (_row / 2) + (_size * 0.35);

        private IEnumerable<int> Shown() => Enumerable.Range(_table.FirstStep, _rows);

        private void PaintNumbers(double x) => _sheet.AddGroup("steps", Shown().Select(step => new Text(
            x + (_size * 2), BaseOf(step), NumberText.Whole(step + 1), _size)
        {
            Ink = Role.QuietText,
            Anchor = Anchor.End,
        }));

        private void PaintLane(int thread, Area lane)
        {
            var marks = new List<Mark>
            {
                Heading(_witness.Threads[thread], lane.X, lane.Width, true),
                new Box(new(lane.X, _top, lane.Width, _rows * _row), Role.Panel),
            };
            foreach (var call in _witness.Calls.Where(call => call.Thread == thread && call.First >= 0))
            {
                int last = call.Last < 0 ? _witness.Steps.Length - 1 : call.Last;
                int first = Math.Max(call.First, _table.FirstStep);
                if (last < first)
                    continue;
                var bar = new Area(
                    lane.X + (_size * 0.3), TopOf(first) + 1, _size * 0.6, ((last - first + 1) * _row) - 2);
                marks.Add(new Box(bar, Ink.Worker(thread)) { Radius = _size * 0.25 });
            }

            foreach (int step in Shown().Where(step => _witness.Steps[step].Thread == thread))
                marks.Add(StepText(step, lane));
            _sheet.AddGroup(
                FormattableString.Invariant($"thread-{thread}"), marks, _words.Thread(_witness.Threads[thread]));
        }

        private Text StepText(int step, Area lane)
        {
            double x = lane.X + (_size * 1.3);
            return new(x, BaseOf(step), TextFit.Shorten(TextOf(step), _size, lane.Right - x), _size)
            {
                Ink = _witness.Steps[step].IsMemory ? Role.QuietText : Role.Text,
            };
        }

        private string TextOf(int step)
        {
            WitnessStep one = _witness.Steps[step];
            var call = _witness.Calls.FirstOrDefault(
                call => call.Thread == one.Thread && call.First == step && !one.IsMemory);
            string said = _words.Checker.Short(one);
            return call is null ? said : $"{call.Text}: {said}";
        }

        private void PaintPlace(int place, double x, double width)
        {
            var marks = new List<Mark> { Heading(_witness.Start.Places[place].Name, x, width, false) };
            foreach (int step in Shown())
            {
                string before = WitnessTable.TextOf(WitnessTable.Before(_witness, step).Places[place]);
                string after = WitnessTable.TextOf(_witness.Steps[step].After.Places[place]);
                bool isChanged = before != after || step == _table.FirstStep;
                marks.Add(isChanged
                    ? new Text(x, BaseOf(step), TextFit.Shorten(after, _size, width, true), _size) { IsBold = true }
                    : new Rule(x + (_size * 0.3), TopOf(step), x + (_size * 0.3), TopOf(step) + _row, Role.Grid));
            }

            _sheet.AddGroup(
                FormattableString.Invariant($"place-{place}"), marks, _witness.Start.Places[place].Name);
        }

        private void PaintBuffer(int thread, double x, double width)
        {
            var marks = new List<Mark> { Heading(_words.BufferOf(_witness.Threads[thread]), x, width, false) };
            foreach (int step in Shown())
            {
                string after = WitnessTable.TextOf(_witness.Steps[step].After.Threads[thread].Buffer);
                if (after.Length == 0)
                    continue;
                var box = new Area(x, TopOf(step) + 1, width - (_size * 0.5), _row - 2);
                marks.Add(new Box(box, Role.Waiting));
                marks.Add(new Text(
                    x + (_size * 0.3), BaseOf(step), TextFit.Shorten(after, _size, box.Width - (_size * 0.6)), _size));
            }

            _sheet.AddGroup(
                FormattableString.Invariant($"buffer-{thread}"), marks,
                _words.StoreBufferOf(_witness.Threads[thread]));
        }

        private Text Heading(string text, double x, double width, bool isBold) => new(
            x, _top - (_sheet.SmallSize * 0.6), TextFit.Shorten(text, _sheet.SmallSize, width, isBold),
            _sheet.SmallSize)
        {
            IsBold = isBold,
            Ink = isBold ? Role.Text : Role.QuietText,
        };
    }
}
