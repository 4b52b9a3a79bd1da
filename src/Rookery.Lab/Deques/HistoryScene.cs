using Rookery.Drawing;

namespace Rookery.Lab.Deques;

/// <summary>The figure of an execution in the room of the deques.</summary>
internal static class HistoryScene
{
    private const double RowHeight = 21;
    private const double HeadHeight = 64;
    private const double TextScale = 0.68;

    /// <summary>Draws it.</summary>
    /// <param name="walk">The execution, and where it is.</param>
    /// <param name="width">Width of its place in the page.</param>
    /// <param name="style">Paints.</param>
    /// <param name="words">The language.</param>
    /// <param name="scale">How large its type is beside that of a page read by one: 1 or more.</param>
    public static string Svg(Walk walk, double width, Style style, DrawingWords words, double scale)
    {
        var frame = new Frame
        {
            Width = Math.Max(Frame.SideMin, width),
            Height = Math.Max(Frame.SideMin, (HeadHeight + (walk.Count * RowHeight)) * scale),
            TextScale = TextScale * scale,
            ShowHeading = false,
            Words = words,
        };
        Scene scene = WitnessView.Draw(walk.Witness, new() { Frame = frame, Current = walk.At - 1, HasTargets = true });
        return SvgWriter.Write(scene, new() { IdPrefix = "d-", Style = style });
    }
}
