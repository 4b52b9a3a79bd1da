using System.Collections.Immutable;
using System.Globalization;
using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Drawing;

/// <summary>Queued tasks as squares whose area is proportional to the work that they contain, on one scale.</summary>
internal sealed class DequeSquares
{
    private const double SideMin = 7;
    private const int ShownMax = 14;

    private readonly Moment _moment;
    private readonly Sheet _sheet;
    private readonly double _sideMax;
    private readonly double _workMax;
    private readonly bool _hasTargets;
    private readonly HashSet<int> _seen = [];

    public DequeSquares(
        Moment moment, Sheet sheet, double sideMax, ImmutableArray<WorkerStage> shown, DequeOptions options)
    {
        (_moment, _sheet, _sideMax, _hasTargets) = (moment, sheet, sideMax, options.HasTargets);
        double most = Math.Max(options.ScaleWork ?? 0, LargestIn(moment.Stage.SharedQueue));
        foreach (var worker in shown)
            most = Math.Max(most, LargestIn(worker.Deque));
        if (moment.Last is { Kind: EventKind.Steal, Task: >= 0 } last)
            most = Math.Max(most, moment.WorkIn(last.Task));
        _workMax = most;
    }

    /// <summary>
    /// Side of the square of a task that the last event took; null before it is drawn, or without one.
    /// </summary>
    public double? GhostSide { get; private set; }

    /// <summary>The work that the largest square stands for.</summary>
    public double Scale => _workMax;

    /// <summary>Whether a task stands in two queues, or twice in one: no lawful run has that.</summary>
    public bool HasRepeats { get; private set; }

    /// <summary>The task that the last event moved; -1 for none.</summary>
    public int Moved => _moment.Last is { } last ? MovedBy(last) : -1;

    /// <summary>The tasks of a queue that can be shown, with the work in each.</summary>
    public ImmutableArray<(int Task, double Work)> TasksIn(ImmutableList<int> queue) =>
    [
        .. ItemsOf(queue, null).Where(item => item.Hidden == 0)
            .Select(item => (item.Task, _moment.WorkIn(item.Task))),
    ];

    /// <summary>A square of a round amount of work as the key to the scale; takes its room at the bottom.</summary>
    public void DrawKey()
    {
        if (_workMax <= 0)
            return;
        var small = _sheet.SmallSize;
        var step = Ticks.StepFor(_workMax, 4);
        var work = Math.Max(Math.Min(1, _workMax), step);
        var side = SideOf(work);
        var strip = _sheet.TakeBottom(Math.Max(side, small) + (small * 0.6));
        var square = new Area(strip.X, strip.Bottom - side, side, side);
        var (time, left) = (_sheet.Words.Time(work, _moment.Unit), square.Right + (small * 0.6));
        var whole = _sheet.Words.AreaKey(time);
        var text = TextFit.Fits(whole, small, strip.Right - left) ? whole : _sheet.Words.ShortAreaKey(time);
        _sheet.AddGroup(
            "key",
            [
                new Box(square, Role.Reference) { Edge = Role.Axis, EdgeWidth = 1 },
                new Text(left, strip.Bottom - (side / 2) + (small * 0.35), text, small)
                {
                    Ink = Role.QuietText,
                },
            ]);
    }

    /// <summary>A deque from bottom (left) to top (right); the middle is left out where there is no room.</summary>
    /// <param name="place">Its lane.</param>
    /// <param name="queue">Index 0 is the oldest, at the top.</param>
    /// <param name="fill">Of the squares.</param>
    /// <param name="ghost">What the last event took from here.</param>
    /// <param name="end">What the end of the oldest is called.</param>
    public List<Mark> LaneMarks(
        Area place, ImmutableList<int> queue, Ink fill, (int Task, int Taker, bool FromTop)? ghost, string end)
    {
        var small = _sheet.SmallSize;
        var marks = new List<Mark>();
        var items = ItemsOf(queue, ghost);
        if (items.Count == 0)
        {
            marks.Add(new Text(place.X, place.MiddleY + (small * 0.35), _sheet.Words.Empty, small)
            {
                Ink = Role.QuietText,
            });
            return marks;
        }

        var endWidth = (FontWidths.Measure(end, small) * TextFit.Reserve) + (small * 1.2);
        var labelled = place.Height >= _sideMax + (small * 1.3);
        var x = place.X;
        foreach (var slot in SlotsOf(items, place.Width - endWidth, labelled))
        {
            marks.AddRange(slot.Item is { } item
                ? SquareMarks(item, new(x, place.Y, slot.Width, place.Height), fill, labelled)
                : [MoreText(slot.Hidden, new(x, place.Y, slot.Width, place.Height))]);
            x += slot.Width;
        }

        marks.Add(new Text(x + (small * 0.2), place.MiddleY + (small * 0.35), "< " + end, small) { IsBold = true });
        return marks;
    }

    // Of what can be shown: the two ends.
    private double LargestIn(ImmutableList<int> queue)
    {
        var most = 0.0;
        for (var i = 0; i < queue.Count; i++)
        {
            if (i == ShownMax && queue.Count > 2 * ShownMax)
                i = queue.Count - ShownMax;
            most = Math.Max(most, _moment.WorkIn(queue[i]));
            HasRepeats |= !_seen.Add(queue[i]);
        }

        return most;
    }

    private static List<Item> ItemsOf(ImmutableList<int> queue, (int Task, int Taker, bool FromTop)? ghost)
    {
        // Only the ends can be shown: the middle of a queue of a million need not be touched.
        var isLong = queue.Count > 2 * ShownMax;
        var items = new List<Item>();
        if (ghost is { FromTop: true } taken)
            items.Add(new(taken.Task, taken.Taker, 0));
        foreach (var task in isLong ? queue.Take(ShownMax) : queue)
            items.Add(new(task, -1, 0));
        if (isLong)
        {
            items.Add(new(-1, -1, queue.Count - (2 * ShownMax)));
            foreach (var task in queue.TakeLast(ShownMax))
                items.Add(new(task, -1, 0));
        }

        if (ghost is { FromTop: false } newest)
            items.Add(new(newest.Task, newest.Taker, 0));
        items.Reverse();
        return items;
    }

    // As many slots as fit: the top end first, then the bottom end, and in between how many are left out.
    private List<Slot> SlotsOf(List<Item> items, double room, bool labelled)
    {
        var small = _sheet.SmallSize;
        var widths = items.ConvertAll(item => WidthOf(item, labelled));
        if (widths.Sum() <= room && !items.Exists(item => item.Hidden > 0))
            return items.Select((item, index) => new Slot(item, 0, widths[index])).ToList();

        var moreWidth = small * 6;
        var (low, high) = (0, items.Count - 1);
        var used = moreWidth;
        var isTop = true;

        // The next to be stolen is seen wherever its square has room, its label shortened.
        if (items[high].Hidden == 0 && room - used >= SideOf(_moment.WorkIn(items[high].Task)) + (small * 1.2))
            widths[high] = Math.Min(widths[high], room - used);
        while (low <= high)
        {
            var index = isTop ? high : low;
            if (items[index].Hidden > 0 || used + widths[index] > room)
                break;
            used += widths[index];
            _ = isTop ? high-- : low++;
            isTop = !isTop;
        }

        var slots = new List<Slot>();
        for (var i = 0; i < low; i++)
            slots.Add(new(items[i], 0, widths[i]));
        slots.Add(new(null, items.Skip(low).Take(high - low + 1).Sum(item => Math.Max(1, item.Hidden)), moreWidth));
        for (var i = high + 1; i < items.Count; i++)
            slots.Add(new(items[i], 0, widths[i]));
        return slots;
    }

    private double WidthOf(Item item, bool labelled)
    {
        if (item.Hidden > 0)
            return 0;
        var small = _sheet.SmallSize;
        var label = Math.Min(FontWidths.Measure(TextOf(item), small) * TextFit.Reserve, small * 9);
        var side = SideOf(_moment.WorkIn(item.Task));
        return labelled ? Math.Max(side, label) + (small * 0.8) : side + label + (small * 1.2);
    }

    private List<Mark> SquareMarks(Item item, Area slot, Ink fill, bool labelled)
    {
        var small = _sheet.SmallSize;
        var side = SideOf(_moment.WorkIn(item.Task));
        var isGhost = item.Taker >= 0;
        var bottom = labelled ? slot.Bottom - (small * 1.4) : slot.MiddleY + (side / 2);
        var square = new Area(slot.X, bottom - side, side, side);
        if (isGhost)
            GhostSide = side;
        var isMoved = _moment.Last is { } last && MovedBy(last) == item.Task;
        var marks = new List<Mark>
        {
            new Box(square, isGhost ? Role.Waiting : fill)
            {
                Edge = isGhost || isMoved ? Role.Text : Role.Axis,
                EdgeWidth = isMoved ? 4 : 1.5,
            },
        };
        var text = TextOf(item);
        var label = labelled
            ? new Text(
                slot.X,
                slot.Bottom - (small * 0.3),
                TextFit.Shorten(text, small, slot.Width - (small * 0.4)),
                small)
            : new Text(
                square.Right + (small * 0.4),
                slot.MiddleY + (small * 0.35),
                TextFit.Shorten(text, small, slot.Right - square.Right - (small * 0.7)),
                small);
        if (label.Content.Length > 0)
            marks.Add(label);
        return _hasTargets ? [Targeted(item, marks)] : marks;
    }

    private Group Targeted(Item item, List<Mark> marks)
    {
        var kind = item.Taker >= 0 ? "gone" : "queued";
        return _sheet.TargetGroup(
            string.Create(CultureInfo.InvariantCulture, $"{kind}-{item.Task}"),
            marks,
            string.Create(CultureInfo.InvariantCulture, $"task={item.Task}"));
    }

    private string TextOf(Item item) =>
        item.Taker >= 0 ? _sheet.Words.GoneTo(item.Taker) : _moment.LabelOf(item.Task);

    private Text MoreText(int hidden, Area slot) =>
        new(slot.X, slot.MiddleY + (_sheet.SmallSize * 0.35), _sheet.Words.More(hidden), _sheet.SmallSize);

    private int MovedBy(TraceEvent last) => last.Kind switch
    {
        EventKind.Fork => _moment.QueuesParent ? last.Task : last.Other,
        EventKind.Steal => last.Task,
        _ => -1,
    };

    private double SideOf(double work) =>
        _workMax <= 0 ? SideMin : Math.Max(SideMin, _sideMax * Math.Sqrt(work / _workMax));

    // A queued task; or one that was just taken, by whom; or how many are left out.
    private readonly record struct Item(int Task, int Taker, int Hidden);

    private readonly record struct Slot(Item? Item, int Hidden, double Width);
}
