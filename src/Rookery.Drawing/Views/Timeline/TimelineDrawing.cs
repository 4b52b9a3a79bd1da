using System.Collections.Immutable;
using System.Globalization;
using Rookery.Traces;

namespace Rookery.Drawing;

/// <summary>Puts a planned timeline on a sheet. Used once.</summary>
internal sealed class TimelineDrawing
{
    private readonly Trace _trace;
    private readonly TimelineOptions _options;
    private readonly TimelinePlan _plan;
    private readonly Sheet _sheet;
    private Area _plot;
    private double _pitch;
    private double _bar;
    private List<Link> _links = [];

    public TimelineDrawing(Trace trace, TimelineOptions options, TimelinePlan plan, Sheet sheet)
    {
        (_trace, _options, _plan, _sheet) = (trace, options, plan, sheet);
    }

    private DrawingWords Words => _sheet.Words;

    public void Draw()
    {
        if (_trace.Count == 0)
        {
            _sheet.Nothing(Words.NoEvents);
            return;
        }

        _links = TimelineLinks.Choose(_plan, _options, _sheet.Room.Width * 0.85);
        foreach (var note in TimelineLinks.NotesOf(_plan, _options, _links.Count))
            _sheet.Note(note);
        DrawLegend(_links.Count > 0);
        Arrange();
        DrawRows();
        DrawAxis();
        if (_plan.Shares is { } shares)
            DrawShares(shares);
        else
            DrawBars();
        DrawLaws();
        _sheet.AddGroup("steals", _links.SelectMany(link => Targeted("steal", link.Step, LinkMarks(link))));
    }

    private void Arrange()
    {
        var small = _sheet.SmallSize;
        var names = Enumerable.Range(0, _plan.Rows).Max(row =>
            FontWidths.Measure(RowName(row), small) * TextFit.Reserve);
        _sheet.TakeBottom(small * 3.2);
        _sheet.TakeTop(small * 2.9);
        _sheet.TakeLeft(names + small);
        _sheet.TakeRight(small * 5.6);
        _pitch = TimelineView.PitchOf(_sheet.Room, _plan.Rows);
        _bar = _pitch * (_plan.Shares is null ? 0.6 : 0.86);
        _plot = _sheet.Room with { Height = _pitch * _plan.Rows };
    }

    private double X(double time)
    {
        var length = Math.Max(1, (double)_plan.To - _plan.From);
        return _plot.X + ((time - _plan.From) / length * _plot.Width);
    }

    private Area RowArea(int row) =>
        new(_plot.X, _plot.Y + (row * _pitch) + ((_pitch - _bar) / 2), _plot.Width, _bar);

    private void DrawRows()
    {
        var small = _sheet.SmallSize;
        var heading = _plot.Y - (small * 0.4);
        _sheet.Add(new Text(_plot.Right + (small * 5.6), heading, Words.Computing, small)
        {
            Ink = Role.QuietText,
            Anchor = Anchor.End,
        });
        // Where rows are lower than text, only some are named.
        var stride = (int)Math.Ceiling(small * 1.25 / _pitch);
        for (var row = 0; row < _plan.Rows; row++)
        {
            var area = RowArea(row);
            var marks = new List<Mark> { new Box(area, Role.Panel) };
            if (row % stride == 0)
            {
                var baseline = area.MiddleY + (small * 0.35);
                marks.Add(new Text(_plot.X - (small * 0.8), baseline, RowName(row), small)
                {
                    Anchor = Anchor.End,
                });
                var share = Words.Percent(_plan.WorkShareOf(row));
                marks.Add(new Text(_plot.Right + (small * 5.6), baseline, share, small) { Anchor = Anchor.End });
            }

            var id = string.Create(CultureInfo.InvariantCulture, $"row-{row}");
            _sheet.AddGroup(id, marks, RowName(row), RowTarget(row));
        }
    }

    private string RowName(int row) => TimelineView.RowName(_plan, row, Words);

    private string RowTarget(int row) => _options.HasTargets && _plan.WorkersInRow == 1
        ? string.Create(CultureInfo.InvariantCulture, $"worker={row}")
        : "";

    private IEnumerable<Mark> Targeted(string kind, int step, IEnumerable<Mark> marks) => !_options.HasTargets
        ? marks
        :
        [
            _sheet.TargetGroup(
                string.Create(CultureInfo.InvariantCulture, $"{kind}-{step}"),
                marks,
                string.Create(CultureInfo.InvariantCulture, $"step={step}")),
        ];

    private void DrawAxis()
    {
        var small = _sheet.SmallSize;
        var unit = _trace.Inputs.TimeUnit;
        var (scale, name) = TimeText.ScaleOf(_plan.To, unit);
        var count = (int)Math.Clamp(_plot.Width / (small * 9), 2, 12);
        var ticks = Ticks.Within(_plan.From / scale, _plan.To / scale, count);
        var marks = ImmutableArray.CreateBuilder<Mark>();
        marks.Add(new Rule(_plot.X, _plot.Bottom + 4, _plot.Right, _plot.Bottom + 4, Role.Axis));
        foreach (var tick in ticks)
        {
            var x = X(tick * scale);
            marks.Add(new Rule(x, _plot.Bottom + 4, x, _plot.Bottom + 12, Role.Axis));
            marks.Add(new Text(x, _plot.Bottom + 14 + small, Words.Tick(tick, ticks), small)
            {
                Anchor = Anchor.Middle,
            });
        }

        var title = Words.TimeIn(Words.Unit(name));
        marks.Add(new Text(_plot.Right, _plot.Bottom + 16 + (small * 2.2), title, small)
        {
            Ink = Role.QuietText,
            Anchor = Anchor.End,
        });
        _sheet.AddGroup("axis", marks);
    }

    private void DrawBars()
    {
        foreach (var row in _plan.Bars.GroupBy(bar => bar.Worker).OrderBy(row => row.Key))
        {
            var id = string.Create(CultureInfo.InvariantCulture, $"bars-{row.Key}");
            _sheet.AddGroup(id, RowMarks(row), RowName(row.Key));
        }
    }

    // Bars of one origin in a row are numbered now and then, not each.
    private IEnumerable<Mark> RowMarks(IEnumerable<Bar> bars)
    {
        var (lane, numberedX) = (-1, double.NegativeInfinity);
        foreach (var bar in bars)
        {
            var place = PlaceOf(bar);
            var fill = Lane.InkOf(bar.Lane, _plan.IsByOrigin);
            var marks = new List<Mark>(2)
            {
                new Box(place, fill) { Edge = place.Width > 4 ? Role.Paper : Role.None, EdgeWidth = 1 },
            };
            var isDue = bar.Lane != lane || place.X > numberedX + (_sheet.SmallSize * 12);
            if (fill.Role == Role.Worker && isDue && NumberX(bar, place) is { } x)
            {
                (lane, numberedX) = (bar.Lane, x);
                marks.Add(NumberOf(bar, place, fill, x));
            }

            foreach (var mark in Targeted("bar", bar.Step, marks))
                yield return mark;
        }
    }

    private Area PlaceOf(Bar bar)
    {
        var row = RowArea(bar.Worker);
        var (from, to) = (X(bar.From), X(bar.To));
        // Computing stands full height; all else is lower, so that it is told apart in any print.
        var inset = Lane.IsWork(bar.Lane) ? 0 : _bar * 0.2;
        return new(from, row.Y + inset, Math.Max(0.6, to - from), _bar - (2 * inset));
    }

    private Text NumberOf(Bar bar, Area place, Ink fill, double x)
    {
        var small = _sheet.SmallSize;
        return new(x, place.MiddleY + (small * 0.35), bar.Lane.ToString(CultureInfo.InvariantCulture), small)
        {
            Over = fill,
            Anchor = Anchor.Middle,
            IsBold = true,
        };
    }

    // Where the number of a bar stands: in the middle, or beside it when a link passes there; null when it is too
    // small.
    private double? NumberX(Bar bar, Area place)
    {
        var half = _sheet.SmallSize * 0.6;
        if (place.Height < half * 1.8)
            return null;
        foreach (var share in new[] { 0.5, 0.35, 0.65, 0.2, 0.8 })
        {
            var x = place.X + (place.Width * share);
            var isWithin = x - half >= place.X && x + half <= place.Right;
            if (isWithin && !_links.Exists(link => link.Crosses(bar.Worker) && Math.Abs(X(link.Time) - x) < half + 4))
                return x;
        }

        return null;
    }

    private void DrawShares(double[,,] shares)
    {
        for (var row = 0; row < _plan.Rows; row++)
        {
            var marks = TimelineShares.Areas(shares, row, RowArea(row), _plan.IsByOrigin);
            _sheet.AddGroup(
                string.Create(CultureInfo.InvariantCulture, $"shares-{row}"), marks, RowName(row));
        }
    }

    private void DrawLaws()
    {
        var processors = Math.Max(1, _trace.Inputs.Cores);
        var work = _options.WorkTicks ?? (double)_plan.WorkTicks;
        var unit = _trace.Inputs.TimeUnit;
        var lines = new List<(double Time, string Name, bool IsLaw)>
        {
            (work / processors, "T1/P", true),
            (_trace.Makespan, "Tp", false),
        };
        if (_options.SpanTicks is > 0 and var span)
            lines.Add((span, "Tinf", true));
        lines.RemoveAll(line => line.Time < _plan.From || line.Time > _plan.To);
        lines.Sort((a, b) => a.Time.CompareTo(b.Time));

        var small = _sheet.SmallSize;
        var taken = new[] { double.NegativeInfinity, double.NegativeInfinity };
        var marks = ImmutableArray.CreateBuilder<Mark>();
        foreach (var (time, name, isLaw) in lines)
        {
            var label = $"{name} = {Words.Time(time, unit)}";
            var width = FontWidths.Measure(label, small, true) * TextFit.Reserve;
            var x = X(time);
            var left = Math.Clamp(x - (width / 2), _plot.X, Math.Max(_plot.X, _plot.Right - width));
            // Two tiers, so that laws that are close together can both be read.
            var tier = left > taken[0] + small ? 0 : 1;
            left = Math.Max(left, taken[tier] + small);
            if (left + width > _plot.Right + (small * 5))
                continue;
            taken[tier] = left + width;
            var baseline = _plot.Y - (small * (tier == 0 ? 0.4 : 1.7));
            marks.Add(new Rule(x, baseline + 5, x, _plot.Bottom + 4, isLaw ? Role.Law : Role.Text)
            {
                Width = 2.5,
                Dash = isLaw ? Dash.Dashed : Dash.Solid,
            });
            marks.Add(new Text(left, baseline, label, small) { IsBold = true, Ink = isLaw ? Role.Law : Role.Text });
        }

        _sheet.AddGroup("laws", marks);
    }

    private IEnumerable<Mark> LinkMarks(Link link)
    {
        var (from, to) = (RowArea(link.FromRow), RowArea(link.ToRow));
        var x = X(link.Time);
        if (_plan.Shares is not null)
            return Arrow.Upright(x, from.MiddleY, to.MiddleY, Math.Clamp(_pitch * 0.3, 4, 9));
        var isDown = to.Y > from.Y;
        return Arrow.Upright(
            x, isDown ? from.Bottom : from.Y, isDown ? to.Y : to.Bottom, Math.Clamp(_pitch * 0.16, 4, 9));
    }

    private void DrawLegend(bool hasLinks)
    {
        var entries = new List<LegendEntry>();
        if (_plan.IsByOrigin)
        {
            var origins = Enumerable.Range(0, Style.WorkerPaints).Where(lane => _plan.Seen[lane]).Select(Ink.Worker);
            entries.Add(new(Words.ComputingByOrigin, [.. origins]));
        }
        else
        {
            entries.Add(LegendEntry.Of(Words.Computing, Role.Working));
        }

        (int Lane, string Name)[] others =
        [
            (Lane.Scheduling, Words.Scheduling), (Lane.Searching, Words.Searching),
            (Lane.Blocked, Words.Blocked), (Lane.Asleep, Words.Asleep),
        ];
        foreach (var (lane, name) in others)
        {
            if (_plan.Seen[lane])
                entries.Add(LegendEntry.Of(name, Lane.InkOf(lane, false)));
        }

        if (hasLinks)
        {
            entries.Add(LegendEntry.Drawn(
                Words.StealLink, area => Arrow.Level(area.X, area.Right, area.MiddleY, 7)));
        }

        Legend.DrawAtBottom(_sheet, entries);
    }
}
