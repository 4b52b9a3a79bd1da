using System.Collections.Immutable;

namespace Rookery.Lessons.Site;

/// <summary>A slide deck that is to be written.</summary>
/// <param name="Path">Where it lies.</param>
/// <param name="Title">Of its first slide.</param>
/// <param name="Subtitle">Below that.</param>
/// <param name="Slides">One for each figure.</param>
public sealed record DeckFile(string Path, string Title, string Subtitle, ImmutableArray<DeckSlide> Slides)
    : SiteFile(Path);
