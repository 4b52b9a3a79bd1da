using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Drawing;

/// <summary>How much work stolen tasks contain, against all that were queued: why thieves take the oldest.</summary>
/// <remarks>
/// Bars are shares of the stolen and of the queued tasks, so that a few steals can be held against many forks. The work
/// of a task is what it still contained, see <see cref="QueuedWork"/>.
/// </remarks>
public static class StolenWorkView
{
    /// <summary>Draws a trace.</summary>
    /// <param name="trace">The run.</param>
    /// <param name="tasks">Its tasks, from <c>TaskTable.From(trace)</c>.</param>
    /// <param name="options">Null for the defaults.</param>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of its range.</exception>
    public static Scene Draw(Trace trace, TaskTable tasks, StolenWorkOptions? options = null)
    {
        var asked = options ?? new();
        var work = RankedWork.Of(trace, tasks);
        var unit = trace.Inputs.TimeUnit;
        var title = $"{TraceSize.NameOf(trace)}: how much work a steal moves";
        var sheet = new Sheet(asked.Frame, title, SubtitleOf(work, unit));
        if (work.Stolen.Count == 0)
            sheet.Nothing("Nothing was stolen.");
        else
            new StolenWorkDrawing(work, asked, unit, sheet).Draw();
        return sheet.Build(DescriptionOf(work, unit));
    }

    /// <summary>Median of ranked values: the middle one, or the mean of the middle two.</summary>
    internal static double MedianOf(List<long> ranked) => ranked.Count % 2 == 1
        ? ranked[ranked.Count / 2]
        : ((double)ranked[(ranked.Count / 2) - 1] + ranked[ranked.Count / 2]) / 2;

    private static string SubtitleOf(RankedWork work, string unit)
    {
        var queued = $"of {TraceSize.Count(work.Queued.Count, "queued task")}";
        if (work.Stolen.Count == 0 || work.Queued.Count == 0)
            return $"{TraceSize.Count(work.Stolen.Count, "task")} stolen {queued}";
        var medianStolen = TimeText.Of(MedianOf(work.Stolen), unit);
        var medianQueued = TimeText.Of(MedianOf(work.Queued), unit);
        return $"{NumberText.Whole(work.Stolen.Count)} stolen {queued}; median work {medianStolen} when stolen, "
            + $"{medianQueued} when queued";
    }

    private static string DescriptionOf(RankedWork work, string unit)
    {
        if (work.Stolen.Count == 0)
            return $"{SubtitleOf(work, unit)}: nothing to compare.";
        var mean = work.Stolen.Average(value => (double)value);
        return $"{SubtitleOf(work, unit)}. Work in stolen tasks: mean {TimeText.Of(mean, unit)}, "
            + $"least {TimeText.Of(work.Stolen[0], unit)}, largest {TimeText.Of(work.Stolen[^1], unit)}.";
    }
}
