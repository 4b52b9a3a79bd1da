using System.Collections.Immutable;
using System.Globalization;
using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Drawing;

/// <summary>Puts a moment on a sheet. Used once.</summary>
internal sealed class DequeDrawing
{
    private const double RowHeightMin = 68;
    private const double RowHeightMax = 150;

    private readonly Moment _moment;
    private readonly DequeOptions _options;
    private readonly Sheet _sheet;
    private readonly Dictionary<int, double> _laneEnds = [];
    private readonly DequeRows? _kept;
    private double _stackWidth;

    public DequeDrawing(Moment moment, DequeOptions options, Sheet sheet, DequeRows? kept)
    {
        (_moment, _options, _sheet, _kept) = (moment, options, sheet, kept);
    }

    public void Draw(string sentence)
    {
        DrawSentence(sentence);
        var shown = ShownWorkers();
        var hidden = _moment.Stage.Workers.Length - shown.Length;
        if (hidden > 0)
            _sheet.Note(SummaryOf(shown));
        var squares = new DequeSquares(_moment, _sheet, SquareMax(shown.Length), shown, _options);
        squares.DrawKey();
        _stackWidth = !_moment.HasDeques ? _sheet.Room.Width : _sheet.Room.Width * StackShare;
        DrawHeadings();
        var lanes = shown.Length + (_moment.IsShared ? 1 : 0);
        var height = Math.Min(RowHeightMax * _sheet.Scale, _sheet.Room.Height / Math.Max(1, lanes));
        var rows = shown.ToDictionary(worker => worker.Worker, _ => _sheet.TakeTop(height));
        _kept?.Begin((_moment.Replay, _options, _stackWidth, squares.Scale), squares.HasRepeats);
        foreach (var worker in shown)
            TakeRow(rows[worker.Worker], worker, squares);
        DrawMove(rows, squares);
        if (_moment.IsShared)
            DrawShared(_sheet.TakeTop(height), squares);
    }

    // On a phone held upright the names of tasks need the larger part.
    private double StackShare => IsNarrow(_sheet.Room.Width * 0.36) ? 0.44 : 0.36;

    private double RowsRoom => _sheet.Room.Height - (_sheet.SmallSize * 4.5);

    private double SquareMax(int workers) =>
        Math.Min(RowHeightMax * _sheet.Scale, RowsRoom / (workers + (_moment.IsShared ? 1 : 0))) * 0.6;

    private void DrawSentence(string sentence)
    {
        if (sentence.Length == 0)
            return;
        var size = _sheet.TextSize;
        var lines = TextFit.Wrap(sentence, size, _sheet.Room.Width - size, 3);
        var strip = _sheet.TakeBottom((lines.Count + 0.7) * size * 1.35);
        var top = strip.Y + (size * 0.7);
        var marks = new List<Mark> { new Rule(strip.X, top, strip.X, strip.Bottom, Role.Text) { Width = 4 } };
        for (var i = 0; i < lines.Count; i++)
        {
            var baseline = top + (i * size * 1.35) + (size * 1.02);
            marks.Add(new Text(strip.X + (size * 0.8), baseline, lines[i], size));
        }

        _sheet.AddGroup("sentence", marks);
    }

    // Those of the last event and the one asked for first, then those with something to show, then the lowest numbers.
    private ImmutableArray<WorkerStage> ShownWorkers()
    {
        var workers = _moment.Stage.Workers;
        var fit = (int)Math.Clamp((RowsRoom / (RowHeightMin * _sheet.Scale)) - (_moment.IsShared ? 1 : 0), 1, 16);
        var most = Math.Min(_options.WorkersMax ?? fit, fit);
        if (workers.Length <= most)
            return workers;
        var last = _moment.Last;
        var ranks = new long[workers.Length];
        for (var i = 0; i < ranks.Length; i++)
            ranks[i] = (Rank(workers[i]) << 32) + i;
        Array.Sort(ranks);
        var chosen = ranks[..most].Select(rank => (int)(rank & int.MaxValue)).Order();
        return [.. chosen.Select(index => workers[index])];

        long Rank(WorkerStage worker)
        {
            var isActor = last is { } item && (worker.Worker == item.Worker
                || (IsAboutVictim(item.Kind) && worker.Worker == item.Other));
            if (isActor || worker.Worker == _options.Focus)
                return 0;
            return worker.Deque.Count > 0 ? 1 : worker.CurrentTask >= 0 ? 2 : 3;
        }
    }

    private string SummaryOf(ImmutableArray<WorkerStage> shown)
    {
        var words = _sheet.Words;
        var numbers = shown.Select(worker => worker.Worker).ToHashSet();
        var counts = new Dictionary<string, int>(StringComparer.Ordinal);
        var (hidden, queued) = (0, 0);
        foreach (var worker in _moment.Stage.Workers)
        {
            if (numbers.Contains(worker.Worker))
                continue;
            var state = Moment.StateOf(worker, words);
            counts[state] = counts.GetValueOrDefault(state) + 1;
            hidden++;
            queued += worker.Deque.Count;
        }

        var states = counts.OrderByDescending(state => state.Value).ThenBy(state => state.Key, StringComparer.Ordinal)
            .Select(state => $"{words.Whole(state.Value)} {state.Key}");
        return words.HiddenWorkers(hidden, string.Join(", ", states), queued);
    }

    private void DrawHeadings()
    {
        var small = _sheet.SmallSize;
        var strip = _sheet.TakeTop(small * 1.7);
        var baseline = strip.Y + small;
        var own = FirstThatFits(_stackWidth - small, _sheet.Words.WorkerHeadings);
        _sheet.Add(new Text(strip.X, baseline, own, small) { Ink = Role.QuietText });
        if (!_moment.HasDeques)
            return;
        var room = strip.Width - _stackWidth;
        var heading = FirstThatFits(room, _sheet.Words.DequeHeadings);
        _sheet.Add(new Text(strip.X + _stackWidth, baseline, heading, small) { Ink = Role.QuietText });
    }

    private string FirstThatFits(double room, ReadOnlySpan<string> texts)
    {
        foreach (var text in texts)
        {
            if (TextFit.Fits(text, _sheet.SmallSize, room))
                return text;
        }

        return TextFit.Shorten(texts[^1], _sheet.SmallSize, room);
    }

    private bool IsNarrow(double width) => width < _sheet.TextSize * 13;

    private void TakeRow(Area row, WorkerStage worker, DequeSquares squares)
    {
        var isActor = _moment.Last is { } last && last.Worker == worker.Worker;
        if (_kept is null || isActor || GhostOf(worker) is not null)
        {
            DrawRow(row, worker, squares, isActor);
        }
        else if (_kept.Find(worker, row, _moment, squares.Moved) is { } same)
        {
            _laneEnds[worker.Worker] = same.LaneEnd;
            _sheet.Add(same.Drawn);
        }
        else
        {
            DrawRow(row, worker, squares, isActor);
            if (_sheet.Last is Group drawn)
            {
                _kept.Keep(
                    worker, row, drawn, _laneEnds.GetValueOrDefault(worker.Worker), squares.TasksIn(worker.Deque),
                    squares.Moved);
            }
        }
    }

    private void DrawRow(Area row, WorkerStage worker, DequeSquares squares, bool isActor)
    {
        var marks = new List<Mark>();
        var lane = row with { Y = row.Y + (row.Height * 0.05), Height = row.Height * 0.9 };
        if (isActor)
        {
            // As wide as the margin lets it be.
            var over = Math.Min(12, lane.X);
            var place = new Area(lane.X - over, lane.Y, lane.Width + (2 * over), lane.Height);
            marks.Add(new Box(place, Role.Panel) { Radius = 8 });
        }

        marks.Add(new Rule(row.X, row.Y, row.Right, row.Y, Role.Grid));
        marks.AddRange(WorkerMarks(lane with { Width = _stackWidth - (_sheet.SmallSize * 1.2) }, worker));
        if (_moment.HasDeques)
        {
            var place = lane with { X = lane.X + _stackWidth, Width = lane.Width - _stackWidth };
            var squareMarks = squares.LaneMarks(
                place, worker.Deque, Ink.Worker(worker.Worker), GhostOf(worker), _sheet.Words.Top);
            _laneEnds[worker.Worker] = squareMarks.Max(mark => mark.Bounds.Right);
            marks.AddRange(squareMarks);
        }

        var number = string.Create(CultureInfo.InvariantCulture, $"{worker.Worker}");
        _sheet.AddGroup("worker-" + number, marks, _sheet.Words.Worker(worker.Worker), $"worker={number}");
    }

    private void DrawShared(Area row, DequeSquares squares)
    {
        var small = _sheet.SmallSize;
        var marks = new List<Mark> { new Rule(row.X, row.Y, row.Right, row.Y, Role.Axis) };
        var name = new Text(row.X, row.Y + (small * 1.3), _sheet.Words.SharedQueue, small) { IsBold = true };
        marks.Add(name);
        var left = row.X + (FontWidths.Measure(name.Content, small, true) * TextFit.Reserve) + (small * 1.2);
        var place = new Area(left, row.Y + (row.Height * 0.05), row.Right - left, row.Height * 0.9);
        marks.AddRange(squares.LaneMarks(place, _moment.Stage.SharedQueue, Role.Reference, null, _sheet.Words.Oldest));
        _sheet.AddGroup("shared-queue", marks);
    }

    // A stolen task as an arrow from the end of the victim's lane, past all lanes on the way, to the thief's row.
    private void DrawMove(Dictionary<int, Area> rows, DequeSquares squares)
    {
        if (squares.GhostSide is not { } side || _moment.Last is not { } last)
            return;
        if (!rows.TryGetValue(last.Worker, out var to))
            return;
        var (small, from) = (_sheet.SmallSize, rows[last.Other]);
        var between = rows.Where(row => row.Value.Y >= Math.Min(from.Y, to.Y) && row.Value.Y <= Math.Max(from.Y, to.Y));
        side = Math.Min(side, to.Height * 0.8);
        var x = between.Max(row => _laneEnds.GetValueOrDefault(row.Key)) + small + (side / 2);
        var start = _laneEnds.GetValueOrDefault(last.Other) + (small * 0.6);
        if (x + (side / 2) > _sheet.Room.Right)
            return;
        var square = new Area(x - (side / 2), to.MiddleY - (side / 2), side, side);
        var end = to.Y > from.Y ? square.Y - 2 : square.Bottom + 2;
        var marks = new List<Mark> { new Box(square, Ink.Worker(last.Worker)) { Edge = Role.Text, EdgeWidth = 4 } };
        var label = TextFit.Shorten(
            _moment.LabelOf(last.Task), small, _sheet.Room.Right - square.Right - (small * 0.6), true);
        if (label.Length > 0)
        {
            marks.Add(new Text(square.Right + (small * 0.6), square.MiddleY + (small * 0.35), label, small)
            {
                IsBold = true,
            });
        }

        marks.AddRange(Arrow.Elbow(start, from.MiddleY, x, end, 9 * _sheet.Scale));
        var target = _options.HasTargets ? string.Create(CultureInfo.InvariantCulture, $"task={last.Task}") : "";
        _sheet.AddGroup("move", marks, _sheet.Words.StolenTask, target);
    }

    // What the last event took from the deque of this worker.
    private (int Task, int Taker, bool FromTop)? GhostOf(WorkerStage worker)
    {
        if (_moment.Last is not { } last || last.Task < 0)
            return null;
        if (last.Kind == EventKind.Steal && last.Other == worker.Worker)
            return (last.Task, last.Worker, !_moment.ThievesTakeNewest);
        return null;
    }

    private List<Mark> WorkerMarks(Area place, WorkerStage worker)
    {
        var (text, small) = (_sheet.TextSize, _sheet.SmallSize);
        var radius = Math.Min(place.Height * 0.4, text * 1.1);
        var isTall = place.Height >= (small * 1.35) + (text * 1.9);
        var middle = isTall ? place.Y + (text * 1.35) : place.MiddleY;
        var ink = Ink.Worker(worker.Worker);
        var number = worker.Worker.ToString(CultureInfo.InvariantCulture);
        var x = place.X + (radius * 2) + (small * 0.7);
        var marks = new List<Mark>
        {
            new Disc(place.X + radius, middle, radius, ink) { Edge = Role.Axis, EdgeWidth = 1 },
            new Text(place.X + radius, middle + (small * 0.35), number, small)
            {
                Over = ink,
                Anchor = Anchor.Middle,
                IsBold = true,
            },
        };
        var baseline = middle + (text * 0.35);
        var state = Moment.StateOf(worker, _sheet.Words);
        var stateWidth = FontWidths.Measure(state, small) * TextFit.Reserve;

        // The stack is made when asked; a step of a run asks for every worker's.
        var stack = worker.Stack;

        // Where a name has no room beside the state, the state goes below it.
        var isStacked = isTall && IsNarrow(place.Width);
        var nameRoom = isStacked ? place.Right - x : place.Right - x - stateWidth - small;
        marks.Add(isStacked
            ? new Text(x, baseline + (small * 1.4), state, small)
            : new Text(place.Right, baseline, state, small) { Anchor = Anchor.End });
        marks.AddRange(Targeted(worker, TaskMarks(worker, stack.Count, new(x, baseline, nameRoom, 0), isTall)));
        var waitingAt = baseline + (small * (isStacked ? 2.7 : 1.5));
        if (isTall && waitingAt < place.Bottom && WaitingText(stack, place.Right - x) is { Length: > 0 } waiting)
            marks.Add(new Text(x, waitingAt, waiting, small) { Ink = Role.QuietText });
        return marks;
    }

    private List<Mark> Targeted(WorkerStage worker, List<Mark> marks)
    {
        if (!_options.HasTargets || worker.CurrentTask < 0 || marks.Count == 0)
            return marks;
        var id = string.Create(CultureInfo.InvariantCulture, $"current-{worker.Worker}");
        return
        [
            _sheet.TargetGroup(
                id, marks, string.Create(CultureInfo.InvariantCulture, $"task={worker.CurrentTask}")),
        ];
    }

    // The current task on one line; in a low row how many lie below it follows, when there is room.
    private List<Mark> TaskMarks(WorkerStage worker, int tasks, Area line, bool isTall)
    {
        var (text, small) = (_sheet.TextSize, _sheet.SmallSize);
        var has = worker.CurrentTask >= 0;
        var name = has ? _moment.LabelOf(worker.CurrentTask) : _sheet.Words.NoTask;
        var label = TextFit.Shorten(name, text, line.Width, has);
        var marks = new List<Mark>();
        if (label.Length == 0)
            return marks;
        marks.Add(new Text(line.X, line.Y, label, text) { IsBold = has, Ink = has ? Role.Text : Role.QuietText });
        var x = line.X + (FontWidths.Measure(label, text, has) * TextFit.Reserve) + (small * 0.6);
        if (isTall || tasks <= 1)
            return marks;
        var below = _sheet.Words.OnMore(tasks - 1);
        if (TextFit.Fits(below, small, line.Right - x))
            marks.Add(new Text(x, line.Y, below, small) { Ink = Role.QuietText });
        return marks;
    }

    // The tasks below the current one, the nearest first: these wait for it, or lie below it on the stack.
    private string WaitingText(ImmutableList<int> stack, double room)
    {
        var below = stack.Take(Math.Max(0, stack.Count - 1)).Reverse().ToList();
        if (below.Count == 0)
            return "";
        for (var count = Math.Min(below.Count, 6); count > 0; count--)
        {
            var more = below.Count > count ? $" {_sheet.Words.More(below.Count - count)}" : "";
            var text = _sheet.Words.OnTopOf(string.Join(", ", below.Take(count).Select(_moment.LabelOf)) + more);
            if (TextFit.Fits(text, _sheet.SmallSize, room))
                return text;
        }

        var words = _sheet.Words;
        return FirstThatFits(
            room,
            [words.OnTopOfWaiting(below.Count), words.OnWaiting(below.Count), words.OnMore(below.Count)]);
    }

    private static bool IsAboutVictim(EventKind kind) =>
        kind is EventKind.Steal or EventKind.Probe or EventKind.Empty or EventKind.LostRace or EventKind.Wake;
}
