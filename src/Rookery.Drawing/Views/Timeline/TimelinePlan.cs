using Rookery.Traces;

namespace Rookery.Drawing;

/// <summary>
/// What a timeline will draw: which workers share a row, and either each bar or, when there are too many, the shares
/// of each small piece of time.
/// </summary>
internal sealed class TimelinePlan
{
    /// <summary>The most bars drawn one by one; above, shares are drawn.</summary>
    public const int BarsMax = 1_600;

    private const int SharePiecesMax = 12_000;

    private readonly List<Bar> _bars = [];
    private readonly long[] _laneTicks;
    private Int128 _workTicks;

    private TimelinePlan(Trace trace, TimelineOptions options, int rowsMax)
    {
        Workers = TraceSize.WorkersOf(trace);
        From = options.From;
        To = Math.Max(From, options.To ?? trace.Makespan);
        WorkersInRow = (Workers + rowsMax - 1) / rowsMax;
        Rows = (Workers + WorkersInRow - 1) / WorkersInRow;
        IsByOrigin = options.Colours == TimelineColours.Origin && Workers <= Style.WorkerPaints
            && trace.Inputs.Option("queues", "per-worker") != "none";
        _laneTicks = new long[Rows];
    }

    public int Workers { get; }

    public int WorkersInRow { get; }

    public int Rows { get; }

    public long From { get; }

    public long To { get; }

    public bool IsByOrigin { get; }

    /// <summary>Each bar, when there are few enough; else empty.</summary>
    public IReadOnlyList<Bar> Bars => _bars;

    /// <summary>
    /// When there are too many bars: [row, piece, lane], the share of the row's workers and the piece's time.
    /// </summary>
    public double[,,]? Shares { get; private set; }

    /// <summary>All steals within the window: time, thief, victim, step.</summary>
    public List<(long Time, int Thief, int Victim, int Step)> Steals { get; } = [];

    /// <summary>Time that all workers computed, in the whole run.</summary>
    public Int128 WorkTicks => _workTicks;

    /// <summary>Which lanes appear within the window.</summary>
    public bool[] Seen { get; } = new bool[Lane.Count];

    /// <summary>Share of a row's time within the window that was computing.</summary>
    public double WorkShareOf(int row)
    {
        var workers = Math.Min(WorkersInRow, Workers - (row * WorkersInRow));
        return To == From ? 0 : _laneTicks[row] / ((double)(To - From) * workers);
    }

    public static TimelinePlan Of(Trace trace, TimelineOptions options, int rowsMax)
    {
        var plan = new TimelinePlan(trace, options, rowsMax);
        var isFull = false;
        plan.Walk(trace, bar => isFull |= !plan.Keep(bar), plan.KeepSteal);
        if (isFull)
            plan.Divide(trace);
        return plan;
    }

    private void Walk(Trace trace, Action<Bar> bar, Action<long, int, int, int> steal) =>
        new BarWalk(trace, Workers, IsByOrigin).Run(bar, steal);

    private bool Keep(Bar whole)
    {
        if (Lane.IsWork(whole.Lane))
            _workTicks += whole.Ticks;
        if (Within(whole) is not { } bar)
            return true;
        Seen[bar.Lane] = true;
        if (Lane.IsWork(bar.Lane))
            _laneTicks[bar.Worker / WorkersInRow] = Saturating(_laneTicks[bar.Worker / WorkersInRow], bar.Ticks);
        if (_bars.Count <= BarsMax)
            _bars.Add(bar);
        return _bars.Count <= BarsMax && WorkersInRow == 1;
    }

    private void KeepSteal(long time, int thief, int victim, int step)
    {
        if (time >= From && time <= To && victim >= 0 && victim < Workers)
            Steals.Add((time, thief, victim, step));
    }

    private void Divide(Trace trace)
    {
        _bars.Clear();
        var pieces = Math.Clamp(SharePiecesMax / Rows, 200, 700);
        var shares = new double[Rows, pieces, Lane.Count];
        Walk(trace, whole => Spread(whole, shares), (_, _, _, _) => { });
        Shares = shares;
    }

    private void Spread(Bar whole, double[,,] shares)
    {
        if (Within(whole) is not { } bar)
            return;
        var row = bar.Worker / WorkersInRow;
        var pieces = shares.GetLength(1);
        var weight = 1.0 / Math.Min(WorkersInRow, Workers - (row * WorkersInRow));
        var first = (bar.From - From) / (double)(To - From) * pieces;
        var last = (bar.To - From) / (double)(To - From) * pieces;
        for (var piece = (int)first; piece < pieces && piece < last; piece++)
            shares[row, piece, bar.Lane] += weight * (Math.Min(last, piece + 1) - Math.Max(first, piece));
    }

    private Bar? Within(Bar bar)
    {
        var clipped = bar with { From = Math.Max(bar.From, From), To = Math.Min(bar.To, To) };
        return clipped.To > clipped.From ? clipped : null;
    }

    private static long Saturating(long sum, long more) => sum > long.MaxValue - more ? long.MaxValue : sum + more;
}
