using Rookery.Drawing;

namespace Rookery.Figures;

/// <summary>Size and paint of figures.</summary>
/// <param name="Frame">Size and heading.</param>
/// <param name="Style">Colours or greys.</param>
/// <param name="Scale">Pixels of a PNG for each of the figure's.</param>
internal sealed record FigureLook(Frame Frame, Style Style, double Scale);
