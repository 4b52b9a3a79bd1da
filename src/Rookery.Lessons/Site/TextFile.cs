namespace Rookery.Lessons.Site;

/// <summary>A page, a style sheet, a script, an SVG.</summary>
/// <param name="Path">Where it lies.</param>
/// <param name="Text">Its text, written as UTF-8.</param>
public sealed record TextFile(string Path, string Text) : SiteFile(Path);
