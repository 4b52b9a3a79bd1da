using System.Collections.Immutable;

namespace Rookery.Lessons;

/// <summary>Lessons that are published together, in the order in which they are taught.</summary>
/// <param name="Title">What the list of lessons is called.</param>
/// <param name="Introduction">The text above the list; null for none.</param>
/// <param name="Lessons">The lessons.</param>
public sealed record Course(string Title, Lesson? Introduction, ImmutableArray<CourseEntry> Lessons)
{
    /// <summary>The page of a lesson's file, or null when it is no lesson of the course.</summary>
    /// <param name="file">Such as <c>02-work-and-span.md</c>.</param>
    public string? PageOf(string file) =>
        file == "index.md" ? "index.html" : Lessons.FirstOrDefault(entry => entry.Slug + ".md" == file)?.Page;
}
