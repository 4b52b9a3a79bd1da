using Rookery.Lab.Runs;
using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Lab.Stage;

/// <summary>The bars of a timeline for a window of time and a width in pixels, ready to be painted.</summary>
/// <remarks>
/// A bar is six numbers: x from 0 to 1, row, width from 0 to 1, lane (<see cref="StretchIndex.LaneOf"/>), the worker
/// whose paint it has, and its height from 0 to 1. Where stretches are wider than a pixel each is a bar; where they are
/// not, a pixel shows which share of its time went into what, as height.
/// </remarks>
internal sealed class TimelineBars
{
    /// <summary>Numbers in a bar.</summary>
    public const int Stride = 6;

    private const int BarsMax = 24_000;

    private readonly double[] _numbers = new double[BarsMax * Stride];
    private int _used;

    /// <summary>The numbers that were filled in.</summary>
    public Span<double> Numbers => _numbers.AsSpan(0, _used);

    /// <summary>Number of bars.</summary>
    public int Count => _used / Stride;

    /// <summary>Fills in the bars of a window.</summary>
    /// <param name="trace">The run.</param>
    /// <param name="index">Its stretches.</param>
    /// <param name="rows">How many rows there are; workers beyond have none.</param>
    /// <param name="from">Where the window begins.</param>
    /// <param name="to">Where it ends; after <paramref name="from"/>.</param>
    /// <param name="pixels">Its width in pixels.</param>
    public void Fill(Trace trace, StretchIndex index, int rows, double from, double to, int pixels)
    {
        _used = 0;
        int columns = Math.Clamp(pixels, 1, Math.Max(1, BarsMax / (Math.Max(1, rows) * StretchIndex.Lanes)));
        for (int worker = 0; worker < rows; worker++)
        {
            (int first, int end) = index.Within(worker, from, to);
            if (end - first <= columns)
                FillEach(trace, index, worker, first, end, from, to);
            else
                FillShares(index, worker, first, from, to, columns);
        }
    }

    private void FillEach(Trace trace, StretchIndex index, int worker, int first, int end, double from, double to)
    {
        for (int place = first; place < end; place++)
        {
            ref readonly TraceEvent item = ref trace[index.StepAt(place)];
            if (item.Kind == EventKind.Stop)
                continue;
            double begin = Math.Max(from, item.Time);
            double until = place + 1 < end ? trace[index.StepAt(place + 1)].Time : Math.Min(to, trace.Makespan);
            if (until > begin)
                Add((begin - from) / (to - from), worker, (until - begin) / (to - from), item, 1);
        }
    }

    private void FillShares(StretchIndex index, int worker, int first, double from, double to, int columns)
    {
        Span<double> before = stackalloc double[StretchIndex.Lanes];
        Span<double> after = stackalloc double[StretchIndex.Lanes];
        double piece = (to - from) / columns;
        int place = index.SumsOn(worker, from, before, first);
        for (int column = 0; column < columns; column++)
        {
            place = index.SumsOn(worker, from + ((column + 1) * piece), after, place);
            for (int lane = 0; lane < StretchIndex.Lanes - 1; lane++)
            {
                double share = (after[lane] - before[lane]) / piece;
                if (share > 0.005)
                    Add(column / (double)columns, worker, 1.0 / columns, lane, Math.Min(1, share));
            }

            after.CopyTo(before);
        }
    }

    private void Add(double x, int worker, double width, in TraceEvent item, double height) =>
        Add(x, worker, width, StretchIndex.LaneOf(Stretches.After(item.Kind)), height);

    private void Add(double x, int worker, double width, int lane, double height)
    {
        if (_used + Stride > _numbers.Length)
            return;
        Span<double> bar = _numbers.AsSpan(_used, Stride);
        (bar[0], bar[1], bar[2], bar[3], bar[4], bar[5]) = (x, worker, width, lane, worker, height);
        _used += Stride;
    }
}
