using System.Collections.Immutable;
using Rookery.Lessons;

namespace Rookery.Courses;

/// <summary>A lesson's file, read; perhaps with something wrong.</summary>
/// <param name="Path">Where it lies, as its reader calls it.</param>
/// <param name="Slug">Its name in addresses.</param>
/// <param name="Page">The address of its page.</param>
/// <param name="Entry">The lesson; null when something is wrong.</param>
/// <param name="Problems">What is wrong.</param>
internal sealed record LoadedLesson(
    string Path, string Slug, string Page, CourseEntry? Entry, ImmutableArray<Problem> Problems);
