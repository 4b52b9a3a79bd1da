using Rookery.Drawing;
using Rookery.Lab.Runs;

namespace Rookery.Lab.Stage;

/// <summary>The picture of all workers at a step, in the size of its place in the page.</summary>
internal static class StageScene
{
    /// <summary>Draws it.</summary>
    /// <param name="run">The run.</param>
    /// <param name="step">Number of events that have happened.</param>
    /// <param name="width">Width of its place.</param>
    /// <param name="height">Height of its place.</param>
    public static Scene Of(LabRun run, int step, double width, double height)
    {
        var frame = new Frame
        {
            Width = Math.Max(Frame.SideMin, width),
            Height = Math.Max(Frame.SideMin, height),
            TextScale = Math.Clamp(width / 1400, 0.62, 1.4),
            ShowHeading = false,
        };
        return DequeView.Draw(
            run.Replay, step, "", new() { Frame = frame, ShowSentence = false, ScaleWork = run.ScaleWork });
    }
}
