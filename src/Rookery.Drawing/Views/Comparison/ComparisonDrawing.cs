using System.Collections.Immutable;
using System.Globalization;

namespace Rookery.Drawing;

/// <summary>Puts a comparison on a sheet. Used once.</summary>
internal sealed class ComparisonDrawing
{
    /// <summary>More pairs than this would be a grey sheet.</summary>
    private const int PairsMax = 80;

    private readonly ComparisonData _data;
    private readonly Sheet _sheet;
    private readonly bool _isLogarithmic;
    private readonly int _pointsMax;
    private readonly double _least;
    private readonly double _most;
    private Area _plot;
    private AxisScale _y;

    public ComparisonDrawing(ComparisonData data, ComparisonOptions options, Sheet sheet)
    {
        (_data, _sheet, _pointsMax) = (data, sheet, options.PointsMax);
        var ends = data.Groups.Select(group => Ranking.EndsOf(group.Values)).ToList();
        _least = Math.Min(data.Groups.Min(group => group.Low), ends.Min(end => end.Least));
        _most = Math.Max(data.Groups.Max(group => group.High), ends.Max(end => end.Most));
        _isLogarithmic = _least > 0 && (options.IsLogarithmic ?? _most > 50 * _least);
    }

    private double ColumnWidth => _plot.Width / _data.Columns.Length;

    private double Radius => Math.Clamp(SeriesWidth / 8, 3, 7) * Math.Min(1, _sheet.Scale);

    private double BarHalf => Math.Min(SeriesWidth * 0.36, 34);

    // From one treatment to the next: the least of two columns, or of two series within one.
    private double SeriesPitch => _data.Series.Length > 1 ? SeriesWidth : ColumnWidth;

    private double SeriesWidth => ColumnWidth * 0.86 / _data.Series.Length;

    public void Draw()
    {
        if (_data.Finding.Length > 0)
            _sheet.Note(_data.Finding);
        int perGroup = Math.Max(5, _pointsMax / _data.Groups.Length);
        var dropped = _data.Groups.Sum(group => Math.Max(0, group.Values.Length - perGroup));
        if (dropped > 0)
            _sheet.Note(_sheet.Words.DroppedRuns(dropped));
        DrawLegend();
        Arrange();
        DrawAxes();
        if (_data.ArePaired)
            DrawPairs();
        var hasMeans = HasRoomForMeans();
        foreach (var group in _data.Groups)
            DrawGroup(group, perGroup, hasMeans);
    }

    private void DrawLegend()
    {
        var entries = new List<LegendEntry>();
        if (_data.Series.Length > 1)
        {
            for (var series = 0; series < _data.Series.Length; series++)
            {
                var (shape, ink) = (series, InkOf(series));
                entries.Add(LegendEntry.Drawn(
                    _data.Series[series], area => [PointShape.At(shape, area.MiddleX, area.MiddleY, 8, ink)]));
            }
        }

        entries.Add(LegendEntry.Drawn(_sheet.Words.MeanAndInterval,
            area => Bar(area.MiddleX, area.Y, area.MiddleY, area.Bottom, 12)));
        Legend.DrawAtBottom(_sheet, entries);
    }

    private void Arrange()
    {
        var small = _sheet.SmallSize;
        _sheet.TakeBottom(small * (_data.ColumnsAre.Length > 0 ? 3.4 : 2.2));
        _sheet.TakeTop(small * 1.8);
        _sheet.TakeLeft(small * 4.4);
        _plot = _sheet.Room;
        var room = _most > _least ? (_most - _least) * 0.06 : Math.Max(1, Math.Abs(_most) * 0.1);
        var from = _least >= 0 && _least < 0.4 * _most ? 0 : _least - room;
        _y = _isLogarithmic
            ? new(_least * 0.9, _most * 1.1, _plot.Bottom, _plot.Y, true)
            : new(from, _most + room, _plot.Bottom, _plot.Y, false);
    }

    private void DrawAxes()
    {
        var small = _sheet.SmallSize;
        var marks = ImmutableArray.CreateBuilder<Mark>();
        var ticks = _y.TicksAbout((int)Math.Clamp(_plot.Height / (small * 4), 2, 8));
        foreach (var tick in ticks)
        {
            var y = _y.Place(tick);
            var label = _isLogarithmic ? _sheet.Words.Short(tick) : _sheet.Words.Tick(tick, ticks);
            marks.Add(new Rule(_plot.X, y, _plot.Right, y, Role.Grid));
            marks.Add(new Text(_plot.X - (small * 0.6), y + (small * 0.35), label, small) { Anchor = Anchor.End });
        }

        marks.Add(new Rule(_plot.X, _plot.Bottom, _plot.Right, _plot.Bottom, Role.Axis));
        var taken = double.NegativeInfinity;
        for (var column = 0; column < _data.Columns.Length; column++)
        {
            var x = MiddleOf(column);
            var label = TextFit.Shorten(_data.Columns[column], small, Math.Max(ColumnWidth * 0.96, small * 3));
            var half = FontWidths.Measure(label, small) * TextFit.Reserve / 2;
            if (x - half < taken + (small * 0.3) || x + half > _plot.Right + (small * 0.5))
                continue;
            taken = x + half;
            marks.Add(new Text(x, _plot.Bottom + 10 + small, label, small) { Anchor = Anchor.Middle });
        }

        marks.Add(new Text(_plot.X - (small * 4.2), _plot.Y - (small * 0.9), _data.Measure, small)
        {
            Ink = Role.QuietText,
        });
        if (_data.ColumnsAre.Length > 0)
        {
            marks.Add(new Text(_plot.Right, _plot.Bottom + 12 + (small * 2.3), _data.ColumnsAre, small)
            {
                Ink = Role.QuietText,
                Anchor = Anchor.End,
            });
        }

        _sheet.AddGroup("axes", marks);
    }

    // Each seed's runs with both treatments are joined: what a seed does to both is then seen as a level line.
    private void DrawPairs()
    {
        var (first, second) = (_data.Groups[0], _data.Groups[^1]);
        var count = Math.Min(first.Values.Length, second.Values.Length);
        if (count > PairsMax)
            return;
        var marks = Enumerable.Range(0, count).Select(Mark (seed) => new Rule(
            MiddleOf(first.Column), _y.Place(first.Values[seed]), MiddleOf(second.Column),
            _y.Place(second.Values[seed]),
            Role.Grid)
        {
            Width = 1.2,
        });
        _sheet.AddGroup("pairs", marks, _sheet.Words.RunsOfOneSeed);
    }

    private void DrawGroup(ComparisonGroup group, int pointsMax, bool hasMeans)
    {
        var ink = InkOf(group.Series);
        var middle = MiddleOf(group.Column)
            + ((group.Series - ((_data.Series.Length - 1) / 2.0)) * SeriesWidth);
        var marks = ImmutableArray.CreateBuilder<Mark>();
        var points = Thinned(group, pointsMax);
        var half = BarHalf;
        var crowd = half;
        foreach (var ((x, y), target) in Spread(points.Select(point => point.Value), middle).Zip(
            points.Select(point => point.Target)))
        {
            crowd = Math.Max(crowd, Math.Abs(x - middle) + Radius);
            var point = PointShape.At(_data.Series.Length > 1 ? group.Series : 0, x, y, Radius, ink);
            marks.Add(_sheet.Leading(point, target));
        }

        marks.AddRange(Bar(middle, _y.Place(Clamped(group.High)), _y.Place(Clamped(group.Mean)),
            _y.Place(Clamped(group.Low)), half));
        if (hasMeans)
            marks.Add(MeanLabel(group, middle, crowd + (_sheet.SmallSize * 0.4)));
        var id = string.Create(CultureInfo.InvariantCulture, $"group-{group.Column}-{group.Series}");
        _sheet.AddGroup(id, marks, _data.Columns[group.Column]);
    }

    // Beside the crowd of points: to its right, or where the sheet ends there, to its left.
    private Text MeanLabel(ComparisonGroup group, double middle, double crowd)
    {
        var small = _sheet.SmallSize;
        var (y, label) = (_y.Place(Clamped(group.Mean)) - (small * 0.4), _sheet.Words.Short(group.Mean));
        var fits = TextFit.Fits(label, small, _plot.Right + (small * 0.5) - middle - crowd, true);
        return new(fits ? middle + crowd : middle - crowd, y, label, small)
        {
            IsBold = true,
            Anchor = fits ? Anchor.Start : Anchor.End,
        };
    }

    // Whether all means can be written between their own points and those of the next treatment.
    private bool HasRoomForMeans()
    {
        if (_data.Columns.Length * _data.Series.Length > 8)
            return false;
        var free = SeriesPitch - (2 * BarHalf) - (_sheet.SmallSize * 0.6);
        return _data.Groups.All(group => TextFit.Fits(_sheet.Words.Short(group.Mean), _sheet.SmallSize, free, true));
    }

    // Points at about the same height stand side by side, alternately to the right and to the left of the middle.
    private IEnumerable<(double X, double Y)> Spread(IEnumerable<double> values, double middle)
    {
        var most = Math.Max(0, (int)(SeriesWidth * 0.38 / (Radius * 1.5)));
        var levels = new Dictionary<int, int>();
        foreach (var value in values)
        {
            var y = _y.Place(value);
            var level = (int)Math.Floor(y / (Radius * 1.6));
            var rank = levels.GetValueOrDefault(level);
            levels[level] = rank + 1;
            var step = most == 0 ? 0 : (rank + 1) / 2 % (most + 1);
            yield return (middle + ((rank % 2 == 0 ? step : -step) * Radius * 1.5), y);
        }
    }

    private static IEnumerable<Mark> Bar(double x, double top, double middle, double bottom, double half)
    {
        yield return new Rule(x, top, x, bottom, Role.Text) { Width = 3 };
        yield return new Rule(x - half, middle, x + half, middle, Role.Text) { Width = 4 };
        yield return new Rule(x - (half / 2), top, x + (half / 2), top, Role.Text) { Width = 2 };
        yield return new Rule(x - (half / 2), bottom, x + (half / 2), bottom, Role.Text) { Width = 2 };
    }

    private static (double Value, string Target)[] Thinned(ComparisonGroup group, int count)
    {
        IEnumerable<int> runs = group.Values.Length <= count
            ? Enumerable.Range(0, group.Values.Length)
            : Ranking.Thinned(Ranking.Of(group.Values.AsSpan()), count);
        return [.. runs.Select(run => (group.Values[run], run < group.Targets.Length ? group.Targets[run] : ""))];
    }

    // An interval may reach below 0, where a logarithm has no place.
    private double Clamped(double value) => Math.Clamp(value, _y.From, _y.To);

    private double MiddleOf(int column) => _plot.X + ((column + 0.5) * ColumnWidth);

    private Ink InkOf(int series) => PointShape.InkOf(series, _data.Series.Length);
}
