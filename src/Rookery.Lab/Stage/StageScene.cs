using Rookery.Drawing;
using Rookery.Lab.Runs;

namespace Rookery.Lab.Stage;

/// <summary>The pictures of the stage, each in the size of its place in the page.</summary>
internal static class StageScene
{
    // Of a sheet they do not grow with the type, and what they take a row has not.
    private const double MarginsHeight = 24;

    /// <summary>All workers at a step.</summary>
    /// <param name="run">The run.</param>
    /// <param name="step">Number of events that have happened.</param>
    /// <param name="width">Width of its place, in pixels.</param>
    /// <param name="height">Height of its place, in pixels.</param>
    /// <param name="words">The language.</param>
    /// <param name="rows">Kept from moment to moment; null to draw all rows.</param>
    public static Scene Workers(LabRun run, int step, double width, double height,
        DrawingWords words, DequeRows? rows = null) => DequeView.Draw(
        run.Replay, step, "", new()
        {
            Frame = FrameOf(width, height, ScaleFor(run, width, height), words),
            ShowSentence = false,
            HasTargets = true,
            ScaleWork = run.ScaleWork,
        },
        rows);

    /// <summary>All tasks, as a tree.</summary>
    /// <param name="run">The run.</param>
    /// <param name="width">Width of its place, in pixels.</param>
    /// <param name="height">Height of its place, in pixels.</param>
    /// <param name="words">The language.</param>
    public static Scene Tree(LabRun run, double width, double height, DrawingWords words) => TaskTreeView.Draw(
        run.Trace, run.Replay.Tasks, new() { Frame = FrameOf(width, height, 0.6, words) });

    // As large as the width allows, and yet with a row for each worker where that is legible at all.
    private static double ScaleFor(LabRun run, double width, double height)
    {
        double byHeight = (height - MarginsHeight) / (110 + (74 * run.Stretches.Workers));
        return Math.Clamp(Math.Min(width / 1250, byHeight), 0.62, 1.6);
    }

    private static Frame FrameOf(double width, double height, double textScale, DrawingWords words) => new()
    {
        Width = Math.Max(Frame.SideMin, Math.Floor(width)),
        Height = Math.Max(Frame.SideMin, Math.Floor(height)),
        TextScale = textScale,
        ShowHeading = false,
        Words = words,
    };
}
