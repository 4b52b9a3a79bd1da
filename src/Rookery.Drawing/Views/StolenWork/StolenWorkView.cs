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
        var words = asked.Frame.Words;
        var title = words.StolenWorkTitle(TraceSize.NameOf(trace, words));
        var sheet = new Sheet(asked.Frame, title, SubtitleOf(work, unit, words));
        if (work.Stolen.Count == 0)
            sheet.Nothing(words.NothingStolen);
        else
            new StolenWorkDrawing(work, asked, unit, sheet).Draw();
        return sheet.Build(DescriptionOf(work, unit, words));
    }

    /// <summary>Median of ranked values: the middle one, or the mean of the middle two.</summary>
    internal static double MedianOf(List<long> ranked) => ranked.Count % 2 == 1
        ? ranked[ranked.Count / 2]
        : ((double)ranked[(ranked.Count / 2) - 1] + ranked[ranked.Count / 2]) / 2;

    private static string SubtitleOf(RankedWork work, string unit, DrawingWords words)
    {
        var hasBoth = work.Stolen.Count > 0 && work.Queued.Count > 0;
        return words.StolenWorkSubtitle(
            work.Stolen.Count,
            work.Queued.Count,
            hasBoth ? words.Time(MedianOf(work.Stolen), unit) : null,
            hasBoth ? words.Time(MedianOf(work.Queued), unit) : null);
    }

    private static string DescriptionOf(RankedWork work, string unit, DrawingWords words)
    {
        var subtitle = SubtitleOf(work, unit, words);
        return work.Stolen.Count == 0
            ? words.NothingToCompareIn(subtitle)
            : words.StolenWorkDescription(
                subtitle,
                words.Time(work.Stolen.Average(value => (double)value), unit),
                words.Time(work.Stolen[0], unit),
                words.Time(work.Stolen[^1], unit));
    }
}
