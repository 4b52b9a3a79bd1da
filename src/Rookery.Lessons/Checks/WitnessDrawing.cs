using System.Collections.Immutable;
using System.Globalization;
using Rookery.Checking.Witnesses;
using Rookery.Checking.Words;
using Rookery.Drawing;
using Rookery.Lessons.Blocks;
using Rookery.Lessons.Exhibits;
using Rookery.Lessons.Players;

namespace Rookery.Lessons.Checks;

/// <summary>Draws an execution that shows something: whole, and step by step.</summary>
internal sealed class WitnessDrawing
{
    private const double WideText = 0.85, NarrowText = 0.88;

    private readonly CheckAnswer _answer;
    private readonly Witness _witness;
    private readonly string _title;
    private readonly string _why;
    private readonly ImmutableArray<string> _code;

    /// <summary>Takes an answer that has an execution.</summary>
    public WitnessDrawing(CheckAnswer answer)
    {
        (_answer, _witness) = (answer, answer.Result.Witness!);
        _why = CheckerWords.English.Why(_witness.Finding!);
        _title = $"{answer.Label}, {CheckWords.WordOf(answer.Result.Memory)}";
        _code = [.. Enumerable.Range(1, answer.Algorithm.Source.LineCount).Select(line =>
            answer.Algorithm.Source.Line(line).TrimEnd('\r'))];
    }

    /// <summary>The whole execution in all sizes.</summary>
    public BlockFigure Figure()
    {
        double rows = Math.Min(_witness.Steps.Length, 60);
        var wide = new Frame { Width = 1200, Height = HeightOf(240, rows * 29), TextScale = WideText };
        var narrow = new Frame { Width = 600, Height = HeightOf(260, rows * 30), TextScale = NarrowText };
        Scene Draw(Frame frame) => WitnessView.Draw(_witness, new() { Frame = frame, Title = _title });
        Scene slide = Draw(FigureSizes.Slide);
        return new()
        {
            Id = "witness",
            Title = slide.Title,
            Description = slide.Description,
            Narration = string.Join(" ", _witness.Steps.Select((step, at) => string.Create(
                CultureInfo.InvariantCulture, $"{at + 1}. {CheckerWords.English.Sentence(step)}"))) + $" {_why}",
            Slide = SvgWriter.Write(slide),
            Wide = SvgWriter.Write(Draw(wide), FigureDrawer.Inline),
            Narrow = SvgWriter.Write(Draw(narrow), FigureDrawer.Inline),
        };
    }

    /// <summary>The execution for the page's player.</summary>
    public BlockPlayer Player()
    {
        int all = _witness.Steps.Length;
        Frame wideFrame = FrameOf(1200, WideText), narrowFrame = FrameOf(600, NarrowText);
        FrameTable wide = new(), narrow = new();
        var talk = new PlayerTalk();
        int steps = 0;
        for (; steps <= Math.Min(all, LessonLimits.FramesMax); steps++)
        {
            wide.Add(PictureOf(steps, wideFrame));
            narrow.Add(PictureOf(steps, narrowFrame));
            Tell(talk, steps);
            if (Math.Max(wide.Bytes, narrow.Bytes) > LessonLimits.FrameBytesMax)
                break;
        }

        string[] kinds = [.. _witness.Threads.Select(name => $"step of {name}"), "step of memory"];
        const string label = "Each thread at its line, and what memory holds; the sentence below says what happened.";
        return new(
            talk.ToJson(0, all, "", kinds, label), PlayerRecorder.JsonOf(wide, wideFrame),
            PlayerRecorder.JsonOf(narrow, narrowFrame), 0, Math.Min(steps, all), all);
    }

    private static double HeightOf(double heading, double rows) => Math.Max(Frame.SideMin, heading + rows);

    private void Tell(PlayerTalk talk, int steps)
    {
        if (steps == 0)
        {
            talk.Add("Nothing has happened yet.", -1, 0, null);
            return;
        }

        WitnessStep step = _witness.Steps[steps - 1];
        string why = steps == _witness.Steps.Length ? $" {_why}" : "";
        talk.Add(
            CheckerWords.English.Sentence(step) + why,
            step.IsMemory ? _witness.Threads.Length : step.Thread, step.Line, null);
    }

    private string PictureOf(int steps, Frame frame) => SvgWriter.Write(
        WitnessStepView.Draw(_witness, steps, new() { Frame = frame, Title = _title, Code = _code }),
        FigureDrawer.Inline);

    private Frame FrameOf(double width, double textScale) => new()
    {
        Width = width,
        Height = Math.Ceiling(WitnessStepView.HeightFor(_witness, width, textScale)),
        TextScale = textScale,
        ShowHeading = false,
    };
}
