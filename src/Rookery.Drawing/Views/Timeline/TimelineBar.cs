namespace Rookery.Drawing;

/// <summary>A rectangle of a timeline as a canvas draws it.</summary>
/// <param name="Row">The row, from 0 at the top; a worker, or some that share a row.</param>
/// <param name="X0">Left edge in pixels from the left of the window.</param>
/// <param name="X1">Right edge, not before the left one: a short bar may be thinner than a pixel, or than a
/// number can tell.</param>
/// <param name="Y0">Lower edge as a share of the row's height, from 0 at its bottom.</param>
/// <param name="Y1">Upper edge, at most 1.</param>
/// <param name="Ink">What the worker does, for <see cref="Style.FillOf"/>; computing has the role of a worker where
/// colours say whose work it is.</param>
public readonly record struct TimelineBar(int Row, float X0, float X1, float Y0, float Y1, Ink Ink);
