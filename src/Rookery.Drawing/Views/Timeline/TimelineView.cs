using System.Globalization;
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
        var plan = TimelinePlan.Of(index, asked, rowsMax);
        var sheet = new Sheet(asked.Frame, TitleOf(trace, plan), SubtitleOf(trace, plan));
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

    private static string TitleOf(Trace trace, TimelinePlan plan) =>
        $"{TraceSize.NameOf(trace)} on {TraceSize.Count(plan.Workers, "worker")}: who did what, and when";

    private static string SubtitleOf(Trace trace, TimelinePlan plan)
    {
        var unit = trace.Inputs.TimeUnit;
        var makespan = TimeText.Of(trace.Makespan, unit);
        var end = trace.Inputs.Starved ? $"starved after {makespan}" : $"makespan {makespan}";
        var utilisation = NumberText.Percent(UtilisationOf(trace, plan));
        return $"{end}, work {TimeText.Of((double)plan.WorkTicks, unit)}, "
            + $"{TraceSize.Count(plan.Steals.Count, "steal")}, utilisation {utilisation}";
    }

    private static string DescriptionOf(Trace trace, TimelinePlan plan, TimelineOptions options)
    {
        if (trace.Count == 0)
            return "The run has no events.";
        var rows = Enumerable.Range(0, Math.Min(plan.Rows, 32)).Select(row =>
            $"{RowName(plan, row)} {NumberText.Percent(plan.WorkShareOf(row))}");
        var unit = trace.Inputs.TimeUnit;
        var span = options.SpanTicks is { } ticks ? $" Span {TimeText.Of(ticks, unit)}." : "";
        var more = plan.Rows > 32 ? string.Create(CultureInfo.InvariantCulture, $", {plan.Rows - 32} more") : "";
        return $"A bar for each worker from {TimeText.Of(plan.From, unit)} to {TimeText.Of(plan.To, unit)}; "
            + $"{SubtitleOf(trace, plan)}.{span} Time spent computing: {string.Join(", ", rows)}{more}.";
    }

    internal static string RowName(TimelinePlan plan, int row)
    {
        var first = row * plan.WorkersInRow;
        var last = Math.Min(first + plan.WorkersInRow, plan.Workers) - 1;
        return first == last
            ? string.Create(CultureInfo.InvariantCulture, $"worker {first}")
            : string.Create(CultureInfo.InvariantCulture, $"workers {first}–{last}");
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
