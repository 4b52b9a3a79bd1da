using Rookery.Drawing;
using Rookery.Lab.Runs;
using Rookery.Lab.Session;
using Rookery.Lab.Shell;
using Rookery.Lab.Texts;
using Rookery.Traces;

namespace Rookery.Lab.Stage;

/// <summary>What a timeline is painted with besides its bars.</summary>
internal static class TimelinePaint
{
    /// <summary>The most steals that are drawn as links; of more, none is told from the next.</summary>
    public const int LinksMax = 150;

    private const double RowMin = 5;

    /// <summary>How many workers get a row: all, or as many as can be told apart.</summary>
    public static int RowsOf(LabRun run, double height) =>
        Math.Clamp(run.Stretches.Workers, 1, Math.Max(1, (int)(height / RowMin)));

    /// <summary>The steals within a window: x, the victim's row, the thief's row, for each.</summary>
    /// <returns>How many numbers were filled in; none when there are more than <see cref="LinksMax"/> steals.</returns>
    public static int Links(LabRun run, TimeWindow window, int rows, double[] links)
    {
        Trace trace = run.Trace;
        IReadOnlyList<int> steals = run.Stretches.Steals;
        int used = 0;
        for (int i = FirstFrom(trace, steals, window.From); i < steals.Count; i++)
        {
            ref readonly TraceEvent item = ref trace[steals[i]];
            if (item.Time > window.To)
                break;
            if (item.Worker >= rows || item.Other < 0 || item.Other >= rows)
                continue;
            if (used == links.Length)
                return 0;
            (links[used], links[used + 1], links[used + 2]) = (window.ShareOf(item.Time), item.Other, item.Worker);
            used += 3;
        }

        return used;
    }

    // The first of the steals that is not before a time.
    private static int FirstFrom(Trace trace, IReadOnlyList<int> steals, double time)
    {
        (int low, int high) = (0, steals.Count);
        while (low < high)
        {
            int middle = low + ((high - low) / 2);
            if (trace[steals[middle]].Time < time)
                low = middle + 1;
            else
                high = middle;
        }

        return low;
    }

    /// <summary>The paints, in the order that <see cref="Browser.IPage.Paint"/> wants them.</summary>
    public static string Paints(Style style)
    {
        var workers = Enumerable.Range(0, Style.WorkerPaints).Select(number => style.FillOf(Ink.Worker(number)).Ground);
        Colour[] others =
        [
            style.FillOf(Role.Scheduling).Ground, style.FillOf(Role.Searching).HatchColour,
            style.FillOf(Role.Asleep).HatchColour, style.LineOf(Role.Text), style.FillOf(Role.Panel).Ground,
        ];
        return string.Join(' ', workers.Concat(others));
    }

    /// <summary>The timeline in words, for those who cannot see it.</summary>
    public static string Describe(LabRun run, LabTexts texts)
    {
        const int told = 16;
        Span<double> sums = stackalloc double[StretchIndex.Lanes];
        var parts = new List<string>();
        for (int worker = 0; worker < Math.Min(told, run.Stretches.Workers); worker++)
        {
            run.Stretches.SumsAt(worker, run.Trace.Makespan, sums);
            double length = Math.Max(1, run.Trace.Makespan);
            parts.Add(texts.Of("timeline.worker", worker, Numbers.Percent(sums[0] / length, texts)));
        }

        return texts.Of(
            "timeline.label", run.Stretches.Workers, Numbers.Whole(run.Trace.Makespan),
            texts.Unit(run.Trace.Inputs.TimeUnit),
            string.Join(", ", parts));
    }
}
