namespace Rookery.Lessons.Site;

/// <summary>A figure that is to be printed: PNG or PDF, by the ending of its path.</summary>
/// <param name="Path">Where it lies.</param>
/// <param name="Svg">The figure.</param>
/// <param name="Title">What it shows, as one line.</param>
public sealed record PrintFile(string Path, string Svg, string Title) : SiteFile(Path);
