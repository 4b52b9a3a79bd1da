using Rookery.Traces;

namespace Rookery.Drawing;

/// <summary>A trace made ready for timelines of any window: what each worker did when, with sums for shares.</summary>
/// <remarks>
/// <para>
/// The bars of each worker stand in order of time, with the time spent in each lane summed up at every 32nd: the share
/// of any stretch of time is a difference of two sums, found by binary search and a look at 32 bars at the most. So a
/// window costs about the same whatever it holds, and its shares are exact at each zoom.
/// </para>
/// <para>Made in portions by <see cref="Advance"/>; whoever asks earlier waits for the rest. Mutable until it is ready,
/// for one thread.</para>
/// </remarks>
public sealed class TimelineIndex
{
    private const double HeightOfIdle = 0.6;

    private readonly BarWalk _walk;
    private readonly WorkerBars?[] _bars;
    private readonly List<(long Time, int Thief, int Victim, int Step)> _steals = [];
    private Int128 _work;

    /// <summary>Begins with nothing done.</summary>
    /// <param name="trace">The run.</param>
    /// <param name="colours">What the colour of computing says.</param>
    public TimelineIndex(Trace trace, TimelineColours colours = TimelineColours.Origin)
    {
        Trace = trace;
        Colours = colours;
        Workers = TraceSize.WorkersOf(trace);
        IsByOrigin = colours == TimelineColours.Origin && Workers <= Style.WorkerPaints
            && trace.Inputs.Option("queues", "per-worker") != "none";
        _bars = new WorkerBars[Workers];
        _walk = new BarWalk(trace, Workers, IsByOrigin);
    }

    /// <summary>The run.</summary>
    public Trace Trace { get; }

    /// <summary>What the colour of computing says.</summary>
    public TimelineColours Colours { get; }

    /// <summary>Number of workers.</summary>
    public int Workers { get; }

    /// <summary>Whether computing has the ink of the worker whose work it is, not one ink for all.</summary>
    public bool IsByOrigin { get; }

    /// <summary>Goes on for so many events.</summary>
    /// <param name="events">At least 1.</param>
    /// <returns>Whether all is done.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is nothing to do.</exception>
    public bool Advance(int events)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(events, 1);
        return _walk.Advance(events, Keep, KeepSteal);
    }

    /// <summary>
    /// The window as rectangles for a canvas: bars, or where they are too many, shares of slices of time.
    /// </summary>
    /// <param name="from">First time shown, in the trace's unit, at least 0.</param>
    /// <param name="to">Last time shown; after <paramref name="from"/>.</param>
    /// <param name="width">Width of the window in pixels, at least 1.</param>
    /// <param name="rows">How many rows there may be, at least 1: workers share rows when they are more.</param>
    /// <param name="into">
    /// Gets the rectangles, in order of rows and time; at least 12 for each row, 5,000 are plenty.
    /// </param>
    /// <returns>How many there are.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    /// <exception cref="ArgumentException">There is no room for a slice of each row.</exception>
    public int Fill(long from, long to, double width, int rows, Span<TimelineBar> into)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(from);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(to, from);
        ArgumentOutOfRangeException.ThrowIfLessThan(width, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(rows, 1);
        Finish();
        int inRow = (Workers + rows - 1) / rows;
        rows = (Workers + inRow - 1) / inRow;
        if (into.Length < rows * Lane.Count)
            throw new ArgumentException($"{rows} rows need room for {rows * Lane.Count} rectangles.", nameof(into));
        if (inRow == 1 && CountWithin(from, to) <= Math.Min(into.Length, 2 * width * rows))
            return FillBars(from, to, width, into);

        // Most slices hold one or two lanes; where they hold more, longer slices are taken until all find room.
        int slices = (int)Math.Clamp(Math.Min(width, into.Length / rows), 1, 4096);
        while (true)
        {
            int count = FillShares(new(from, to, slices, inRow), width, into);
            if (count >= 0)
                return count;
            slices = Math.Max(1, slices / 2);
        }
    }

    internal Int128 WorkTicks
    {
        get
        {
            Finish();
            return _work;
        }
    }

    internal int CountWithin(long from, long to)
    {
        Finish();
        int count = 0;
        foreach (WorkerBars? bars in _bars)
            count += bars?.CountWithin(from, to) ?? 0;
        return count;
    }

    internal IEnumerable<Bar> BarsWithin(long from, long to)
    {
        Finish();
        for (int worker = 0; worker < Workers; worker++)
        {
            foreach (Bar bar in _bars[worker]?.Within(worker, from, to) ?? [])
                yield return bar;
        }
    }

    /// <summary>Steals from one time to another, both included.</summary>
    internal IEnumerable<(long Time, int Thief, int Victim, int Step)> StealsWithin(long from, long to)
    {
        Finish();
        return _steals.Where(steal => steal.Time >= from && steal.Time <= to);
    }

    /// <summary>The time that a row's workers spent in each lane, slice by slice, in the trace's unit.</summary>
    /// <param name="row">The row.</param>
    /// <param name="cut">The window and its slices.</param>
    /// <param name="into">[slice · lanes + lane].</param>
    internal void TimesOf(int row, TimelineCut cut, Span<double> into)
    {
        Finish();
        into.Clear();
        Span<double> before = stackalloc double[Lane.Count];
        Span<double> after = stackalloc double[Lane.Count];
        int end = Math.Min(Workers, (row + 1) * cut.WorkersInRow);
        for (int worker = row * cut.WorkersInRow; worker < end; worker++)
        {
            if (_bars[worker] is not { } bars)
                continue;
            int block = bars.BlockAt(cut.From);
            before.Clear();
            bars.AddUpTo(cut.From, block, before);
            for (int slice = 0; slice < cut.Slices; slice++)
            {
                after.Clear();
                bars.AddUpTo(cut.TimeAt(slice + 1), block, after);
                Span<double> times = into.Slice(slice * Lane.Count, Lane.Count);
                for (int lane = 0; lane < Lane.Count; lane++)
                    times[lane] += after[lane] - before[lane];
                after.CopyTo(before);
            }
        }
    }

    private void Finish()
    {
        while (!Advance(int.MaxValue))
        {
        }
    }

    private void Keep(Bar bar)
    {
        if (Lane.IsWork(bar.Lane))
            _work += bar.Ticks;
        (_bars[bar.Worker] ??= new WorkerBars()).Add(bar);
    }

    private void KeepSteal(long time, int thief, int victim, int step)
    {
        if (victim >= 0 && victim < Workers)
            _steals.Add((time, thief, victim, step));
    }

    private int FillBars(long from, long to, double width, Span<TimelineBar> into)
    {
        int count = 0;
        double scale = width / (to - from);
        foreach (Bar bar in BarsWithin(from, to))
        {
            float low = Lane.IsWork(bar.Lane) ? 0 : (float)((1 - HeightOfIdle) / 2);
            into[count++] = new(
                bar.Worker,
                (float)((bar.From - from) * scale),
                (float)((bar.To - from) * scale),
                low,
                1 - low,
                Lane.InkOf(bar.Lane, IsByOrigin));
        }

        return count;
    }

    // -1 when they do not fit.
    private int FillShares(TimelineCut cut, double width, Span<TimelineBar> into)
    {
        double[] times = new double[cut.Slices * Lane.Count];
        int[] open = new int[Lane.Count];
        int count = 0;
        for (int row = 0; row * cut.WorkersInRow < Workers; row++)
        {
            TimesOf(row, cut, times);
            Array.Fill(open, -1);
            double whole = (cut.To - cut.From) / (double)cut.Slices * cut.WorkersIn(row, Workers);
            for (int slice = 0; slice < cut.Slices; slice++)
            {
                float ground = 0;
                for (int lane = 0; lane < Lane.Count; lane++)
                {
                    float share = (float)(times[(slice * Lane.Count) + lane] / whole);
                    if (share < 0.004f)
                    {
                        open[lane] = -1;
                        continue;
                    }

                    float top = Math.Min(1, ground + share);
                    float right = (float)((slice + 1) * width / cut.Slices);
                    if (open[lane] >= 0 && into[open[lane]] is var former
                        && Math.Abs(former.Y0 - ground) < 0.004f && Math.Abs(former.Y1 - top) < 0.004f)
                    {
                        into[open[lane]] = former with { X1 = right };
                    }
                    else if (count == into.Length)
                    {
                        return -1;
                    }
                    else
                    {
                        open[lane] = count;
                        float left = (float)(slice * width / cut.Slices);
                        into[count++] = new(row, left, right, ground, top, Lane.InkOf(lane, IsByOrigin));
                    }

                    ground = top;
                }
            }
        }

        return count;
    }
}
