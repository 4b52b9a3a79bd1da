using Rookery.Drawing;
using Rookery.Traces;

namespace Rookery.Lessons.Exhibits;

/// <summary>The sizes in which an exhibit draws a figure.</summary>
internal static class FigureSizes
{
    private const int RowsMax = 16;

    /// <summary>A slide: legible at the back of a lecture room.</summary>
    public static Frame Slide { get; } = new();

    /// <summary>A picture of workers in a wide page: as high as its rows need.</summary>
    public static Frame WideOf(Trace trace, bool hasHeading) => new()
    {
        Width = 1200,
        Height = Math.Max(Frame.SideMin, (hasHeading ? 220 : 140) + (108 * RowsOf(trace))),
        TextScale = 0.85,
        ShowHeading = hasHeading,
    };

    /// <summary>The same on a phone held upright.</summary>
    public static Frame NarrowOf(Trace trace, bool hasHeading) => new()
    {
        Width = 600,
        Height = Math.Max(Frame.SideMin, (hasHeading ? 250 : 150) + (112 * RowsOf(trace))),
        TextScale = 0.88,
        ShowHeading = hasHeading,
    };

    /// <summary>Figures of a whole run in a wide page.</summary>
    public static Frame WideWhole { get; } = new() { Width = 1200, Height = 640, TextScale = 0.85 };

    /// <summary>The same on a phone.</summary>
    public static Frame NarrowWhole { get; } = new() { Width = 600, Height = 680, TextScale = 0.85 };

    private static int RowsOf(Trace trace)
    {
        bool isShared = trace.Inputs.Option("queues", "per-worker") == "shared";
        return Math.Clamp(trace.Inputs.Workers, 1, RowsMax) + (isShared ? 1 : 0);
    }
}
