namespace Rookery.Lessons.Site;

/// <summary>One slide with one figure.</summary>
/// <param name="Title">What it shows.</param>
/// <param name="Svg">The figure, without which the slide would be empty.</param>
/// <param name="Alternative">The figure in words.</param>
/// <param name="Notes">What the lecturer says.</param>
public sealed record DeckSlide(string Title, string Svg, string Alternative, string Notes);
