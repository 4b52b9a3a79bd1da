using System.Collections.Immutable;

namespace Rookery.Drawing;

/// <summary>Puts a histogram of stolen work on a sheet. Used once.</summary>
internal sealed class StolenWorkDrawing
{
    private readonly RankedWork _work;
    private readonly StolenWorkOptions _options;
    private readonly string _unit;
    private readonly Sheet _sheet;
    private readonly WorkClasses _classes;
    private Area _plot;
    private AxisScale _y;

    public StolenWorkDrawing(RankedWork work, StolenWorkOptions options, string unit, Sheet sheet)
    {
        (_work, _options, _unit, _sheet) = (work, options, unit, sheet);
        _classes = WorkClasses.For([.. work.Queued, .. work.Stolen], _options.IsLogarithmic);
    }

    public void Draw()
    {
        Legend.DrawAtBottom(
            _sheet,
            [
                LegendEntry.Of(_sheet.Words.AllQueued, Role.Reference),
                LegendEntry.Of(_sheet.Words.StolenTasks, Role.Emphasis),
            ]);
        Arrange();
        DrawAxes();
        DrawBars();
        DrawMeans();
    }

    // Doubling classes keep the trace's unit: in a larger one the first of them would all read 0.
    private (double Scale, string Name) Scale =>
        _classes.IsLogarithmic ? (1, _unit) : TimeText.ScaleOf(_classes.Edges[^1], _unit);

    private double ClassWidth => _plot.Width / _classes.Count;

    private void Arrange()
    {
        var small = _sheet.SmallSize;
        _sheet.TakeBottom(small * 3.6);
        _sheet.TakeTop(small * 4.2);
        _sheet.TakeLeft(small * 3.6);
        _sheet.TakeRight(small * 1.5);
        _plot = _sheet.Room;
        var stolen = _classes.CountsOf(_work.Stolen).Max() / (double)_work.Stolen.Count;
        var queued = _work.Queued.Count == 0 ? 0 : _classes.CountsOf(_work.Queued).Max() / (double)_work.Queued.Count;
        _y = new(0, Math.Max(stolen, queued) * 1.12, _plot.Bottom, _plot.Y, false);
    }

    private void DrawAxes()
    {
        var small = _sheet.SmallSize;
        var marks = ImmutableArray.CreateBuilder<Mark>();
        foreach (var tick in _y.TicksAbout((int)Math.Clamp(_plot.Height / (small * 4), 2, 6), 0.01))
        {
            var y = _y.Place(tick);
            marks.Add(new Rule(_plot.X, y, _plot.Right, y, tick == 0 ? Role.Axis : Role.Grid));
            var percent = $"{_sheet.Words.Decimal(tick * 100, 0)} %";
            marks.Add(new Text(_plot.X - (small * 0.6), y + (small * 0.35), percent, small)
            {
                Anchor = Anchor.End,
            });
        }

        DrawEdgeLabels(marks);
        var unit = Scale.Name;
        var title = _sheet.Words.WorkInTask(_sheet.Words.Unit(unit));
        marks.Add(new Text(_plot.Right, _plot.Bottom + 14 + (small * 2.3), title, small)
        {
            Ink = Role.QuietText,
            Anchor = Anchor.End,
        });
        _sheet.AddGroup("axes", marks);
    }

    private void DrawEdgeLabels(ImmutableArray<Mark>.Builder marks)
    {
        var small = _sheet.SmallSize;
        var taken = double.NegativeInfinity;
        var first = _classes.HasZero ? 1 : 0;
        if (_classes.HasZero)
            AddLabel(_plot.X + (ClassWidth / 2), "0");
        for (var i = 0; i < _classes.Edges.Length; i++)
        {
            var x = _plot.X + ((first + i) * ClassWidth);
            marks.Add(new Rule(x, _plot.Bottom, x, _plot.Bottom + 8, Role.Axis));
            AddLabel(x, _sheet.Words.Short(_classes.Edges[i] / Scale.Scale));
        }

        void AddLabel(double x, string text)
        {
            var half = FontWidths.Measure(text, small) * TextFit.Reserve / 2;
            if (x - half < taken + (small * 0.4))
                return;
            taken = x + half;
            marks.Add(new Text(x, _plot.Bottom + 12 + small, text, small) { Anchor = Anchor.Middle });
        }
    }

    private void DrawBars()
    {
        var small = _sheet.SmallSize;
        var (stolen, queued) = (_classes.CountsOf(_work.Stolen), _classes.CountsOf(_work.Queued));
        var marks = ImmutableArray.CreateBuilder<Mark>();
        for (var i = 0; i < _classes.Count; i++)
        {
            // Side by side: the reference may stand higher or lower than what is compared with it.
            var half = ClassWidth * 0.44;
            var middle = _plot.X + ((i + 0.5) * ClassWidth);
            if (queued[i] > 0)
                marks.Add(Bar(middle - half, half, queued[i] / (double)_work.Queued.Count, Role.Reference));
            if (stolen[i] == 0)
                continue;
            var bar = Bar(middle, half, stolen[i] / (double)_work.Stolen.Count, Role.Emphasis);
            marks.Add(bar);
            var count = _sheet.Words.Short(stolen[i]);
            if (TextFit.Fits(count, small, ClassWidth * 0.95, true))
            {
                marks.Add(new Text(bar.Place.MiddleX, bar.Place.Y - (small * 0.35), count, small)
                {
                    Anchor = Anchor.Middle,
                    IsBold = true,
                });
            }
        }

        _sheet.AddGroup("bars", marks);
    }

    private Box Bar(double x, double width, double share, Role role)
    {
        var y = _y.Place(share);
        return new(new(x, y, width, _plot.Bottom - y), role);
    }

    // Means and medians of the stolen, as lines with their values above the plot, in as many tiers as they need.
    private void DrawMeans()
    {
        var small = _sheet.SmallSize;
        (string Name, double Value, Dash Dash)[] lines =
        [
            (_sheet.Words.MedianStolen, StolenWorkView.MedianOf(_work.Stolen), Dash.Solid),
            (_sheet.Words.MeanStolen, _work.Stolen.Average(value => (double)value), Dash.Dashed),
        ];
        var marks = new List<Mark>();
        var baseline = _plot.Y - (small * 2.3);
        foreach (var (name, value, dash) in lines)
        {
            var x = _plot.X + (Math.Clamp(_classes.PlaceOf(value), 0, _classes.Count) * ClassWidth);
            var label = $"{name} {_sheet.Words.Time(value, _unit)}";
            var width = FontWidths.Measure(label, small) * TextFit.Reserve;
            var isLeft = x + width + small > _plot.Right;
            marks.Add(new Rule(x, baseline - small, x, _plot.Bottom, Role.Text) { Width = 2.5, Dash = dash });
            marks.Add(new Text(isLeft ? x - (small * 0.5) : x + (small * 0.5), baseline, label, small)
            {
                Anchor = isLeft ? Anchor.End : Anchor.Start,
            });
            baseline += small * 1.4;
        }

        _sheet.AddGroup("means", marks);
    }
}
