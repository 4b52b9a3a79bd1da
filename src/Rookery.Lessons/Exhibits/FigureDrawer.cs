using System.Globalization;
using Rookery.Drawing;
using Rookery.Lessons.Blocks;
using Rookery.Traces;
using Rookery.Traces.Narration;
using Rookery.Traces.Replaying;

namespace Rookery.Lessons.Exhibits;

/// <summary>Draws the figures of one run in all their sizes.</summary>
internal sealed class FigureDrawer
{
    private readonly Trace _trace;
    private readonly Narrator _narrator;
    private readonly long _span;

    /// <summary>Takes a run.</summary>
    /// <param name="trace">Its trace.</param>
    /// <param name="span">Its span, for the line in the timeline; 0 for none.</param>
    public FigureDrawer(Trace trace, long span)
    {
        (_trace, _span) = (trace, span);
        Replay = new Replay(trace);
        _narrator = new Narrator(Replay);
        ScaleWork = DequeView.LargestQueued(Replay);
    }

    /// <summary>How figures that stand in a page are written: with ids that the page makes its own.</summary>
    public static SvgOptions Inline { get; } = new() { IdPrefix = BlockFigure.IdPrefix };

    /// <summary>The run, to be looked at step by step.</summary>
    public Replay Replay { get; }

    /// <summary>The work of the largest square: one scale for all pictures of the run.</summary>
    public long ScaleWork { get; }

    /// <summary>What happened at a step, as a sentence.</summary>
    public string SentenceOf(int step) => step < 0 ? "Nothing has happened yet." : _narrator.Sentence(step);

    /// <summary>The workers just after a step.</summary>
    /// <param name="step">The step; -1 for before anything.</param>
    /// <param name="moment">What the lesson calls the moment.</param>
    /// <param name="number">Which of the exhibit's moments, from 1.</param>
    public BlockFigure Moment(int step, string moment, int number)
    {
        string sentence = SentenceOf(step);
        // The sentence stands below the figure in a page, and in it on a slide.
        string told = $"{sentence} {_narrator.Describe(Replay.At(step + 1))}";
        return Figure(
            string.Create(CultureInfo.InvariantCulture, $"deques-{number}"),
            frame => Workers(step + 1, sentence, frame, frame == FigureSizes.Slide) with { Description = told },
            FigureSizes.WideOf(_trace, true), FigureSizes.NarrowOf(_trace, true)) with
        {
            Moment = moment,
            Step = step + 1,
            Narration = sentence,
        };
    }

    /// <summary>The workers after so many events, without heading: a picture of the player.</summary>
    public Scene Workers(int events, string sentence, Frame frame, bool hasSentence) => DequeView.Draw(
        Replay, events, sentence, new() { Frame = frame, ShowSentence = hasSentence, ScaleWork = ScaleWork });

    /// <summary>A figure of the whole run.</summary>
    /// <param name="view">Which; not the workers and no table.</param>
    /// <param name="curve">The speed-up curve, where that is asked for.</param>
    public BlockFigure Whole(ExhibitView view, SpeedUpData? curve) => Figure(
        ViewWords.WordOf(view),
        frame => view switch
        {
            ExhibitView.Timeline => TimelineView.Draw(_trace, new() { Frame = frame, SpanTicks = _span }),
            ExhibitView.Tree => TaskTreeView.Draw(_trace, Replay.Tasks, new() { Frame = frame }),
            ExhibitView.StolenWork => StolenWorkView.Draw(_trace, Replay.Tasks, new() { Frame = frame }),
            ExhibitView.Steals => StealMatrixView.Draw(_trace, new() { Frame = frame }),
            _ => SpeedUpView.Draw(curve!, new() { Frame = frame }),
        },
        FigureSizes.WideWhole, FigureSizes.NarrowWhole);

    private static BlockFigure Figure(string id, Func<Frame, Scene> draw, Frame wide, Frame narrow)
    {
        Scene slide = draw(FigureSizes.Slide);
        return new()
        {
            Id = id,
            Title = slide.Title,
            Description = slide.Description,
            Slide = SvgWriter.Write(slide),
            Wide = SvgWriter.Write(draw(wide), Inline),
            Narrow = SvgWriter.Write(draw(narrow), Inline),
        };
    }
}
