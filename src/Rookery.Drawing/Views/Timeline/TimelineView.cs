using Rookery.Traces;

namespace Rookery.Drawing;

/// <summary>
/// All workers over time: what each did when, the steals as links from victim to thief, the laws as lines.
/// </summary>
/// <remarks>
/// Up to <see cref="TimelinePlan.BarsMax"/> bars are drawn one by one. Of a longer run each row shows, piece of time by
/// piece of time, which share of it went into what: the height of the colour is the share. More workers than rows share
/// rows evenly. A note in the figure says what was put together or left out.
/// </remarks>
public static class TimelineView
{
    private const double RowPitchMin = 21;
    private const double RowPitchMax = 150;

    /// <summary>Draws a trace.</summary>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of its range.</exception>
    public static Scene Draw(Trace trace, TimelineOptions? options = null)
    {
        var asked = options ?? new();
        return Draw(new TimelineIndex(trace, asked.Colours), asked);
    }

    /// <summary>Draws a trace that was made ready before: for figures of many windows.</summary>
    /// <param name="index">The trace made ready; finished first where it is not.</param>
    /// <param name="options">Null for the defaults; its colours are those of the index.</param>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of its range.</exception>
    public static Scene Draw(TimelineIndex index, TimelineOptions? options = null)
    {
        var (trace, asked) = (index.Trace, options ?? new());
        Check(asked);
        var rowsMax = (int)Math.Clamp((asked.Frame.Height - 340) / RowPitchMin, 4, 64);
        var words = asked.Frame.Words;
        var plan = TimelinePlan.Of(index, asked, rowsMax);
        var sheet = new Sheet(asked.Frame, TitleOf(trace, plan, words), SubtitleOf(trace, plan, words));
        new TimelineDrawing(trace, asked, plan, sheet).Draw();
        return sheet.Build(DescriptionOf(trace, plan, asked));
    }

    private static void Check(TimelineOptions options)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(options.From);
        ArgumentOutOfRangeException.ThrowIfNegative(options.LinksMax);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(options.LinksMax, 400);
        if (options.To is { } to)
            ArgumentOutOfRangeException.ThrowIfLessThan(to, options.From);
    }

    private static string TitleOf(Trace trace, TimelinePlan plan, DrawingWords words) =>
        words.TimelineTitle(TraceSize.NameOf(trace, words), plan.Workers);

    private static string SubtitleOf(Trace trace, TimelinePlan plan, DrawingWords words)
    {
        var unit = trace.Inputs.TimeUnit;
        return words.TimelineSubtitle(
            trace.Inputs.Starved,
            words.Time(trace.Makespan, unit),
            words.Time((double)plan.WorkTicks, unit),
            plan.Steals.Count,
            words.Percent(UtilisationOf(trace, plan)));
    }

    private static string DescriptionOf(Trace trace, TimelinePlan plan, TimelineOptions options)
    {
        var words = options.Frame.Words;
        if (trace.Count == 0)
            return words.NoEvents;
        var rows = Enumerable.Range(0, Math.Min(plan.Rows, 32)).Select(row =>
            $"{RowName(plan, row, words)} {words.Percent(plan.WorkShareOf(row))}");
        var unit = trace.Inputs.TimeUnit;
        return words.TimelineDescription(
            words.Time(plan.From, unit),
            words.Time(plan.To, unit),
            SubtitleOf(trace, plan, words),
            options.SpanTicks is { } ticks ? words.Time(ticks, unit) : null,
            string.Join(", ", rows),
            plan.Rows - 32);
    }

    internal static string RowName(TimelinePlan plan, int row, DrawingWords words)
    {
        var first = row * plan.WorkersInRow;
        var last = Math.Min(first + plan.WorkersInRow, plan.Workers) - 1;
        return first == last ? words.Worker(first) : words.WorkerRange(first, last);
    }

    internal static double PitchOf(Area plot, int rows) => Math.Min(plot.Height / rows, RowPitchMax);

    // Of the cores, as the measures define it: threads beyond them cannot compute at the same time.
    private static double UtilisationOf(Trace trace, TimelinePlan plan)
    {
        var cores = Math.Min(Math.Max(1, trace.Inputs.Cores), plan.Workers);
        var sum = 0.0;
        for (var row = 0; row < plan.Rows; row++)
            sum += plan.WorkShareOf(row) * Math.Min(plan.WorkersInRow, plan.Workers - (row * plan.WorkersInRow));
        return sum / cores;
    }
}
