namespace Rookery.Lessons.Site;

/// <summary>One file of a published course.</summary>
/// <param name="Path">Where it lies in the folder, with <c>/</c> between folders.</param>
public abstract record SiteFile(string Path);
