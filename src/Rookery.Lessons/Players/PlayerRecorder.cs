using System.Collections.Immutable;
using System.Globalization;
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
        var talk = new PlayerTalk();
        for (int events = first; events <= last; events++)
        {
            string sentence = drawer.SentenceOf(events - 1);
            if (events == 0)
                talk.Add(sentence, -1, 0, 0);
            else
                talk.Add(sentence, (int)trace[events - 1].Kind, trace[events - 1].Line, trace[events - 1].Time);
        }

        return talk.ToJson(first, trace.Count, trace.Inputs.TimeUnit, PlayerKinds.Words, null);
    }

    /// <summary>Pictures as JSON.</summary>
    public static string JsonOf(FrameTable table, Frame frame) => table.ToJson(
        frame.Width.ToString(CultureInfo.InvariantCulture), frame.Height.ToString(CultureInfo.InvariantCulture));
}
