using System.Collections.Immutable;
using System.Globalization;

namespace Rookery.Drawing;

/// <summary>Puts a planned speed-up figure on a sheet. Used once.</summary>
internal sealed class SpeedUpDrawing
{
    private readonly SpeedUpData _data;
    private readonly SpeedUpOptions _options;
    private readonly SpeedUpPlan _plan;
    private readonly Sheet _sheet;
    private readonly List<(double Y, string Text, Ink Ink, int Series)> _ends = [];
    private Area _plot;
    private double _right;
    private bool _areNamesBelow;
    private AxisScale _x;
    private AxisScale _y;

    public SpeedUpDrawing(SpeedUpData data, SpeedUpOptions options, SpeedUpPlan plan, Sheet sheet)
    {
        (_data, _options, _plan, _sheet) = (data, options, plan, sheet);
    }

    public void Draw()
    {
        WriteNotes();
        _areNamesBelow = NamesWidth() > SideWidth - (_sheet.SmallSize * 0.7);
        if (_areNamesBelow)
            DrawNamesBelow();
        Arrange();
        DrawGreedyRange();
        DrawAxes();
        if (_options.ShowLaws)
            DrawLaws();
        for (var series = 0; series < _data.Series.Length; series++)
            DrawSeries(series);
        if (_data.Series.Length == 1)
            DrawMedianLabels();
        if (!_areNamesBelow)
            DrawEnds();
    }

    private double SideWidth => Math.Min(_sheet.SmallSize * 15, _sheet.Room.Width * 0.3);

    private bool HasSpan => _options.ShowLaws && _data.SpanTicks > 0 && _data.SpanTicks <= _data.WorkTicks;

    // The ends of the axis of speed-ups.
    private double Least => _plan.IsLogarithmic ? Math.Min(1, _plan.SpeedUpMin * 0.9) : 0;

    private double Top => Math.Max(_plan.SpeedUpMax, Least * 1.5);

    private double Ceiling => (double)_data.WorkTicks / _data.SpanTicks;

    private void WriteNotes()
    {
        if (_plan.Dropped > 0)
            _sheet.Note(_sheet.Words.DroppedRuns(_plan.Dropped));
        if (_plan.WithoutTime > 0)
            _sheet.Note(_sheet.Words.RunsWithoutTime(_plan.WithoutTime));
    }

    private void Arrange()
    {
        var small = _sheet.SmallSize;
        _sheet.TakeBottom(small * 3.4);
        _sheet.TakeTop(small * 1.6);
        _sheet.TakeLeft(small * 3.6);
        _right = _sheet.Room.Right;
        _sheet.TakeRight(_areNamesBelow ? small * 0.8 : SideWidth);
        _plot = _sheet.Room;
        var isLog = _plan.IsLogarithmic;
        var right = Math.Max(_plan.WorkersMax, 2);
        var inset = small * 0.8;
        _x = new(isLog ? 1 : 0, right, isLog ? _plot.X + inset : _plot.X, _plot.Right - inset, isLog);
        _y = new(Least, Top, _plot.Bottom, _plot.Y, isLog);
    }

    private void DrawAxes()
    {
        var small = _sheet.SmallSize;
        var marks = ImmutableArray.CreateBuilder<Mark>();
        foreach (var tick in _y.TicksAbout((int)Math.Clamp(_plot.Height / (small * 4), 2, 8)))
        {
            var y = _y.Place(tick);
            marks.Add(new Rule(_plot.X, y, _plot.Right, y, Role.Grid));
            marks.Add(new Text(_plot.X - (small * 0.6), y + (small * 0.35), _sheet.Words.Short(tick), small)
            {
                Anchor = Anchor.End,
            });
        }

        marks.Add(new Rule(_plot.X, _plot.Bottom, _plot.Right, _plot.Bottom, Role.Axis));
        var taken = double.NegativeInfinity;
        foreach (var workers in _plan.Points.Select(point => point.Workers).Distinct().Order())
        {
            var x = _x.Place(workers);
            marks.Add(new Rule(x, _plot.Bottom, x, _plot.Bottom + 8, Role.Axis));
            var label = _sheet.Words.Short(workers);
            var half = FontWidths.Measure(label, small) * TextFit.Reserve / 2;
            if (x - half < taken + (small * 0.4))
                continue;
            taken = x + half;
            marks.Add(new Text(x, _plot.Bottom + 12 + small, label, small) { Anchor = Anchor.Middle });
        }

        marks.Add(new Text(_plot.Right, _plot.Bottom + 14 + (small * 2.2), _sheet.Words.WorkersAxis, small)
        {
            Ink = Role.QuietText,
            Anchor = Anchor.End,
        });
        marks.Add(new Text(_plot.X - (small * 3.4), _plot.Y - (small * 0.8), _sheet.Words.SpeedUpAxis, small)
        {
            Ink = Role.QuietText,
        });
        _sheet.AddGroup("axes", marks);
    }

    // Where every greedy schedule must lie: above the greedy bound, below linear and ceiling.
    private void DrawGreedyRange()
    {
        if (!HasSpan)
            return;
        var steps = ImmutableArray.CreateBuilder<PathStep>();
        var samples = Samples().ToList();
        foreach (var workers in samples)
            Extend(workers, Math.Min(workers, Ceiling));
        for (var i = samples.Count - 1; i >= 0; i--)
            Extend(samples[i], SpeedUpView.GreedyLeast(_data.WorkTicks, _data.SpanTicks, samples[i]));
        steps.Add(PathStep.Close);
        _sheet.AddGroup("greedy-range", [new Outline(steps.ToImmutable(), Role.Panel)], _sheet.Words.GreedyRange);

        void Extend(double workers, double speedUp)
        {
            var (x, y) = (_x.Place(workers), _y.Place(Math.Min(speedUp, _y.To)));
            steps.Add(steps.Count == 0 ? PathStep.Move(x, y) : PathStep.Line(x, y));
        }
    }

    private void DrawLaws()
    {
        var top = Math.Min(_y.To, _x.To);
        var marks = ImmutableArray.CreateBuilder<Mark>();
        marks.Add(new Rule(_x.Place(1), _y.Place(1), _x.Place(top), _y.Place(top), Role.Law)
        {
            Width = 2.5,
            Dash = Dash.Dashed,
        });
        if (top >= _x.To)
            _ends.Add((_y.Place(top), _sheet.Words.Linear, Role.Law, -1));
        else if (!_areNamesBelow)
            marks.Add(LinearLabel(top));
        if (HasSpan)
        {
            if (Ceiling <= Top)
            {
                var y = _y.Place(Ceiling);
                marks.Add(new Rule(_plot.X, y, _plot.Right, y, Role.Law) { Width = 2.5 });
                _ends.Add((y, CeilingName, Role.Law, -1));
            }

            var curve = Samples().Select((workers, index) =>
            {
                var y = _y.Place(SpeedUpView.GreedyLeast(_data.WorkTicks, _data.SpanTicks, workers));
                return index == 0 ? PathStep.Move(_x.Place(workers), y) : PathStep.Line(_x.Place(workers), y);
            }).ToImmutableArray();
            marks.Add(new Outline(curve, default) { Edge = Role.Law, EdgeWidth = 2.5, Dash = Dash.Dotted });
            _ends.Add((curve[^1].Y, _sheet.Words.GreedyLeast, Role.Law, -1));
        }

        _sheet.AddGroup("laws", marks);
    }

    private Text LinearLabel(double top)
    {
        var small = _sheet.SmallSize;
        var (x, y) = (_x.Place(top) + (small * 0.6), _y.Place(top) + (small * 0.35));
        return new(x, y, _sheet.Words.Linear, small) { Ink = Role.Law };
    }

    private IEnumerable<double> Samples()
    {
        const int count = 96;
        for (var i = 0; i <= count; i++)
        {
            var share = (double)i / count;
            yield return _plan.IsLogarithmic ? Math.Pow(_x.To, share) : 1 + ((_x.To - 1) * share);
        }
    }

    private void DrawSeries(int series)
    {
        var ink = SeriesInk(series);
        var medians = _plan.Medians[series];
        if (medians.Length == 0)
            return;
        var line = medians.Select((median, index) => index == 0
            ? PathStep.Move(_x.Place(median.Workers), _y.Place(median.SpeedUp))
            : PathStep.Line(_x.Place(median.Workers), _y.Place(median.SpeedUp)));
        var marks = ImmutableArray.CreateBuilder<Mark>();
        marks.Add(new Outline([.. line], default) { Edge = ink, EdgeWidth = 3 });
        foreach (var (_, workers, speedUp, target) in _plan.Points.Where(point => point.Series == series))
        {
            var point = PointShape.At(series, _x.Place(workers), _y.Place(speedUp), 7 * _sheet.Scale, ink);
            marks.Add(_sheet.Leading(point, target));
        }

        var id = string.Create(CultureInfo.InvariantCulture, $"series-{series}");
        _sheet.AddGroup(id, marks, _data.Series[series].Name);
        _ends.Add((_y.Place(medians[^1].SpeedUp), NameOf(series), ink, series));
    }

    private string NameOf(int series) =>
        $"{_sheet.Words.Decimal(_plan.Medians[series][^1].SpeedUp, 2)}  {_data.Series[series].Name}";

    private string CeilingName => $"T1/Tinf = {_sheet.Words.Short(Ceiling)}";

    private IEnumerable<int> DrawnSeries =>
        Enumerable.Range(0, _data.Series.Length).Where(series => _plan.Medians[series].Length > 0);

    private double NamesWidth()
    {
        var small = _sheet.SmallSize;
        string[] laws = !_options.ShowLaws ? []
            : HasSpan ? [_sheet.Words.Linear, _sheet.Words.GreedyLeast, CeilingName] : [_sheet.Words.Linear];
        var widths = laws.Select(name => FontWidths.Measure(name, small) * TextFit.Reserve).Concat(
            DrawnSeries.Select(series =>
                (FontWidths.Measure(NameOf(series), small, true) * TextFit.Reserve) + (small * 1.6)));
        return widths.DefaultIfEmpty(0).Max();
    }

    // Where there is no room beside the lines: what each is, below.
    private void DrawNamesBelow()
    {
        var entries = DrawnSeries.Select(series => LegendEntry.Drawn(NameOf(series), place =>
        [
            new Rule(place.X, place.MiddleY, place.Right, place.MiddleY, SeriesInk(series)) { Width = 3 },
            PointShape.At(series, place.MiddleX, place.MiddleY, 7 * _sheet.Scale, SeriesInk(series)),
        ])).ToList();
        if (_options.ShowLaws)
            entries.Add(Law(_sheet.Words.Linear, Dash.Dashed));
        if (HasSpan && Ceiling <= Top)
            entries.Add(Law(CeilingName, Dash.Solid));
        if (HasSpan)
            entries.Add(Law(_sheet.Words.GreedyLeast, Dash.Dotted));
        Legend.DrawAtBottom(_sheet, entries);

        static LegendEntry Law(string name, Dash dash) => LegendEntry.Drawn(name, place =>
            [new Rule(place.X, place.MiddleY, place.Right, place.MiddleY, Role.Law) { Width = 2.5, Dash = dash }]);
    }

    // The numbers of a single series stand to the lower right of its medians, below the greedy bound if that is near.
    private void DrawMedianLabels()
    {
        var small = _sheet.SmallSize;
        var marks = new List<Mark>();
        var taken = default(Area);
        foreach (var (workers, speedUp) in _plan.Medians[0].SkipLast(1))
        {
            var x = _x.Place(workers) + (small * 0.5);
            var text = _sheet.Words.Decimal(speedUp, 2);
            var label = new Text(x, BaselineOf(workers, speedUp), text, small) { IsBold = true };
            if (label.Bounds.Overlaps(taken) || label.Bounds.Right > _plot.Right || label.Bounds.Bottom > _plot.Bottom)
                continue;
            taken = label.Bounds;
            marks.Add(label);
        }

        _sheet.AddGroup("medians", marks);
    }

    private double BaselineOf(int workers, double speedUp)
    {
        var small = _sheet.SmallSize;
        var baseline = _y.Place(speedUp) + (small * 1.3);
        if (!HasSpan)
            return baseline;
        var greedy = _y.Place(SpeedUpView.GreedyLeast(_data.WorkTicks, _data.SpanTicks, workers));
        var isNear = greedy > baseline - (small * 1.4) && greedy < baseline + (small * 0.6);
        return isNear ? greedy + (small * 1.2) : baseline;
    }

    // Names stand where their lines end, moved apart where they would touch.
    private void DrawEnds()
    {
        var small = _sheet.SmallSize;
        var marks = new List<Mark>();
        var x = _plot.Right + (small * 0.7);
        var room = _right - x;
        var y = double.NegativeInfinity;
        foreach (var end in _ends.OrderBy(end => end.Y))
        {
            y = Math.Max(end.Y, y + (small * 1.35));
            var isSeries = end.Series >= 0;
            var text = TextFit.Shorten(end.Text, small, room - (isSeries ? small * 1.6 : 0), isSeries);
            if (isSeries)
            {
                marks.Add(new Rule(x, y, x + (small * 1.2), y, end.Ink) { Width = 3 });
                marks.Add(PointShape.At(end.Series, x + (small * 0.6), y, 7 * _sheet.Scale, end.Ink));
            }

            marks.Add(new Text(isSeries ? x + (small * 1.6) : x, y + (small * 0.35), text, small)
            {
                Ink = isSeries ? Role.Text : end.Ink,
                IsBold = isSeries,
            });
        }

        _sheet.AddGroup("names", marks);
    }

    private Ink SeriesInk(int series) => PointShape.InkOf(series, _data.Series.Length);
}
