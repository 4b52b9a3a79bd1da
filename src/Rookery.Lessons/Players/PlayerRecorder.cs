using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Rookery.Drawing;
using Rookery.Lessons.Blocks;
using Rookery.Lessons.Exhibits;
using Rookery.Traces;

namespace Rookery.Lessons.Players;

/// <summary>Records a run for the player of a page.</summary>
internal static class PlayerRecorder
{
    /// <summary>Steps shown before the first moment when the run is too long to be carried whole.</summary>
    private const int LeadIn = 200;

    /// <summary>Records the steps of a window.</summary>
    /// <param name="drawer">Draws the pictures.</param>
    /// <param name="trace">The run.</param>
    /// <param name="stops">The lesson's moments, as steps.</param>
    /// <param name="asked">The steps that the lesson asks for; null for a choice of our own.</param>
    public static BlockPlayer Record(
        FigureDrawer drawer, Trace trace, ImmutableArray<int> stops, (int First, int Last)? asked)
    {
        (int first, int last) = WindowOf(trace, stops, asked);
        Frame wideFrame = FigureSizes.WideOf(trace, false), narrowFrame = FigureSizes.NarrowOf(trace, false);
        FrameTable wide = new(), narrow = new();
        int events = first;
        for (; events <= last; events++)
        {
            wide.Add(SvgWriter.Write(drawer.Workers(events, "", wideFrame, false), FigureDrawer.Inline));
            narrow.Add(SvgWriter.Write(drawer.Workers(events, "", narrowFrame, false), FigureDrawer.Inline));

            // Whatever the pictures weigh, a page stays light: the window ends early instead.
            if (Math.Max(wide.Bytes, narrow.Bytes) > LessonLimits.FrameBytesMax)
                break;
        }

        last = Math.Min(last, events);
        return new(
            TalkOf(drawer, trace, first, last), JsonOf(wide, wideFrame), JsonOf(narrow, narrowFrame), first, last,
            trace.Count);
    }

    private static (int First, int Last) WindowOf(
        Trace trace, ImmutableArray<int> stops, (int First, int Last)? asked)
    {
        if (asked is { } steps)
        {
            int from = Math.Min(steps.First, trace.Count);
            return (from, Math.Min(Math.Min(steps.Last + 1, trace.Count), from + LessonLimits.FramesMax));
        }

        if (trace.Count <= LessonLimits.FramesMax)
            return (0, trace.Count);

        // From shortly before the first moment, or from the start where all the moments fit as well.
        int lastStop = stops.Max() + 1;
        int first = lastStop < LessonLimits.FramesMax - LeadIn ? 0 : Math.Max(0, stops.Min() + 1 - LeadIn);
        return (first, Math.Min(trace.Count, first + LessonLimits.FramesMax));
    }

    private static string TalkOf(FigureDrawer drawer, Trace trace, int first, int last)
    {
        var sentences = new Dictionary<string, int>(StringComparer.Ordinal);
        var table = new List<string>();
        List<int> said = [], kinds = [], lines = [];
        List<long> times = [];
        for (int events = first; events <= last; events++)
        {
            string sentence = drawer.SentenceOf(events - 1);
            if (!sentences.TryGetValue(sentence, out int number))
            {
                sentences.Add(sentence, number = table.Count);
                table.Add(sentence);
            }

            said.Add(number);
            times.Add(events == 0 ? 0 : trace[events - 1].Time);
            kinds.Add(events == 0 ? -1 : (int)trace[events - 1].Kind);
            lines.Add(events == 0 ? 0 : trace[events - 1].Line);
        }

        var json = new StringBuilder();
        json.Append(CultureInfo.InvariantCulture, $"{{\"first\":{first},\"all\":{trace.Count},\"unit\":");
        json.Append(PlayerJson.TextOf(trace.Inputs.TimeUnit)).Append(",\"kinds\":[");
        json.AppendJoin(',', PlayerKinds.Words.Select(PlayerJson.TextOf)).Append("],\"sentences\":[\n");
        json.AppendJoin(",\n", table.Select(PlayerJson.TextOf)).Append("],\n\"said\":[").AppendJoin(',', said);
        json.Append("],\n\"time\":[").AppendJoin(',', times.Select(one => one.ToString(CultureInfo.InvariantCulture)));
        json.Append("],\n\"kind\":[").AppendJoin(',', kinds);
        return json.Append("],\n\"line\":[").AppendJoin(',', lines).Append("]}").ToString();
    }

    private static string JsonOf(FrameTable table, Frame frame) => table.ToJson(
        frame.Width.ToString(CultureInfo.InvariantCulture), frame.Height.ToString(CultureInfo.InvariantCulture));
}
