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
    private readonly double[] _computed;

    private TimelinePlan(TimelineIndex index, TimelineOptions options, int rowsMax)
    {
        var trace = index.Trace;
        Workers = index.Workers;
        From = options.From;
        To = Math.Max(From, options.To ?? trace.Makespan);
        WorkersInRow = (Workers + rowsMax - 1) / rowsMax;
        Rows = (Workers + WorkersInRow - 1) / WorkersInRow;
        IsByOrigin = index.IsByOrigin;
        WorkTicks = index.WorkTicks;
        _computed = new double[Rows];
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
    public Int128 WorkTicks { get; }

    /// <summary>Which lanes appear within the window.</summary>
    public bool[] Seen { get; } = new bool[Lane.Count];

    /// <summary>Share of a row's time within the window that was computing.</summary>
    public double WorkShareOf(int row)
    {
        var workers = Math.Min(WorkersInRow, Workers - (row * WorkersInRow));
        return To == From ? 0 : _computed[row] / ((double)(To - From) * workers);
    }

    public static TimelinePlan Of(TimelineIndex index, TimelineOptions options, int rowsMax)
    {
        var plan = new TimelinePlan(index, options, rowsMax);
        foreach (var steal in index.StealsWithin(plan.From, plan.To))
            plan.Steals.Add(steal);
        plan.Measure(index);
        if (plan.WorkersInRow == 1 && index.CountWithin(plan.From, plan.To) <= BarsMax)
            plan._bars.AddRange(index.BarsWithin(plan.From, plan.To));
        else
            plan.Divide(index);
        return plan;
    }

    // What was done within the window at all, and how much of it was computing.
    private void Measure(TimelineIndex index)
    {
        var times = new double[Lane.Count];
        for (var row = 0; row < Rows && To > From; row++)
        {
            index.TimesOf(row, new(From, To, 1, WorkersInRow), times);
            for (var lane = 0; lane < Lane.Count; lane++)
            {
                Seen[lane] |= times[lane] > 0;
                _computed[row] += Lane.IsWork(lane) ? times[lane] : 0;
            }
        }
    }

    private void Divide(TimelineIndex index)
    {
        var pieces = Math.Clamp(SharePiecesMax / Rows, 200, 700);
        var shares = new double[Rows, pieces, Lane.Count];
        var times = new double[pieces * Lane.Count];
        for (var row = 0; row < Rows && To > From; row++)
        {
            var cut = new TimelineCut(From, To, pieces, WorkersInRow);
            index.TimesOf(row, cut, times);
            var whole = (To - From) / (double)pieces * cut.WorkersIn(row, Workers);
            for (var i = 0; i < times.Length; i++)
                shares[row, i / Lane.Count, i % Lane.Count] = times[i] / whole;
        }

        Shares = shares;
    }
}
