using System.Collections.Immutable;
using System.Globalization;

namespace Rookery.Drawing;

/// <summary>A scene while it is drawn: collects marks, and hands out room from the edges inwards. Mutable.</summary>
internal sealed class Sheet
{
    private readonly ImmutableArray<Mark>.Builder _marks = ImmutableArray.CreateBuilder<Mark>();
    private readonly Frame _frame;
    private readonly string _title;
    private readonly Dictionary<string, int> _targetIds = new(StringComparer.Ordinal);

    public Sheet(Frame frame, string title, string subtitle)
    {
        frame.Check();
        _frame = frame;
        _title = frame.Title.Length > 0 ? frame.Title : title;
        var margin = 40 * Math.Min(1, frame.Width / 1600);
        Room = new(margin, margin * 0.7, frame.Width - (2 * margin), frame.Height - (1.4 * margin));
        if (frame.ShowHeading)
            DrawHeading(subtitle);
    }

    /// <summary>What is still free.</summary>
    public Area Room { get; private set; }

    /// <summary>The words of the figure's language.</summary>
    public DrawingWords Words => _frame.Words;

    /// <summary>Size of titles.</summary>
    public double TitleSize => 36 * _frame.TextScale;

    /// <summary>Size of text that carries the message.</summary>
    public double TextSize => 24 * _frame.TextScale;

    /// <summary>Size of the least text: ticks, labels, notes.</summary>
    public double SmallSize => 20 * _frame.TextScale;

    /// <summary>Times pixel lengths that follow the size of text.</summary>
    public double Scale => _frame.TextScale;

    /// <summary>What was added last; null at first.</summary>
    public Mark? Last => _marks.Count == 0 ? null : _marks[^1];

    /// <summary>Takes a strip off the top.</summary>
    public Area TakeTop(double height)
    {
        var taken = Room with { Height = Math.Min(height, Room.Height) };
        Room = Room with { Y = taken.Bottom, Height = Room.Height - taken.Height };
        return taken;
    }

    /// <summary>Takes a strip off the bottom.</summary>
    public Area TakeBottom(double height)
    {
        var size = Math.Min(height, Room.Height);
        var taken = Room with { Y = Room.Bottom - size, Height = size };
        Room = Room with { Height = Room.Height - size };
        return taken;
    }

    /// <summary>Takes a strip off the left.</summary>
    public Area TakeLeft(double width)
    {
        var taken = Room with { Width = Math.Min(width, Room.Width) };
        Room = Room with { X = taken.Right, Width = Room.Width - taken.Width };
        return taken;
    }

    /// <summary>Takes a strip off the right.</summary>
    public Area TakeRight(double width)
    {
        var size = Math.Min(width, Room.Width);
        var taken = Room with { X = Room.Right - size, Width = size };
        Room = Room with { Width = Room.Width - size };
        return taken;
    }

    /// <summary>Adds a mark above all so far.</summary>
    public void Add(Mark mark) => _marks.Add(mark);

    /// <summary>Adds a group of marks, unless there are none.</summary>
    public void AddGroup(string id, IEnumerable<Mark> marks, string label = "", string target = "")
    {
        var array = marks.ToImmutableArray();
        if (array.Length > 0)
            _marks.Add(new Group(id, array) { Label = label, Target = target });
    }

    /// <summary>A mark that leads somewhere; the mark itself where it leads nowhere.</summary>
    public Mark Leading(Mark mark, string target) => target.Length == 0
        ? mark
        : TargetGroup(target.Replace('=', '-'), [mark], target);

    /// <summary>
    /// Marks as a group that a page can find by its target; of a run that is not lawful the same name may come again
    /// and then gets a number.
    /// </summary>
    public Group TargetGroup(string id, IEnumerable<Mark> marks, string target, string label = "")
    {
        var count = _targetIds[id] = _targetIds.GetValueOrDefault(id) + 1;
        var name = count == 1 ? id : string.Create(CultureInfo.InvariantCulture, $"{id}-again-{count}");
        return new(name, [.. marks]) { Label = label, Target = target };
    }

    /// <summary>A line of text at the bottom that says what the figure leaves out.</summary>
    public void Note(string text)
    {
        foreach (var line in TextFit.Wrap(text, SmallSize, Room.Width, 2).Reverse())
        {
            var strip = TakeBottom(SmallSize * 1.4);
            Add(new Text(strip.X, strip.Bottom - (SmallSize * 0.3), line, SmallSize) { Ink = Role.QuietText });
        }
    }

    /// <summary>The sentence for a figure with nothing to show, in the middle of the free room.</summary>
    public void Nothing(string text)
    {
        Add(new Text(Room.MiddleX, Room.MiddleY, TextFit.Shorten(text, TextSize, Room.Width), TextSize)
        {
            Anchor = Anchor.Middle,
            Ink = Role.QuietText,
        });
    }

    /// <summary>The finished scene.</summary>
    public Scene Build(string description) => new()
    {
        Title = _title,
        Description = description,
        Width = _frame.Width,
        Height = _frame.Height,
        Marks = _marks.ToImmutable(),
    };

    private void DrawHeading(string subtitle)
    {
        foreach (var line in TextFit.Wrap(_title, TitleSize, Room.Width, 2, isBold: true))
        {
            var strip = TakeTop(TitleSize * 1.25);
            Add(new Text(strip.X, strip.Y + TitleSize, line, TitleSize) { IsBold = true });
        }

        foreach (var line in TextFit.Wrap(subtitle, TextSize, Room.Width, 2))
        {
            var strip = TakeTop(TextSize * 1.35);
            Add(new Text(strip.X, strip.Y + TextSize, line, TextSize) { Ink = Role.QuietText });
        }

        TakeTop(TextSize * 0.6);
    }
}
