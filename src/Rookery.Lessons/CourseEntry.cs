namespace Rookery.Lessons;

/// <summary>A lesson with its place in a course.</summary>
/// <param name="Slug">Its name in addresses: its file's without ending.</param>
/// <param name="Page">The address of its page.</param>
/// <param name="Lesson">It.</param>
public sealed record CourseEntry(string Slug, string Page, Lesson Lesson);
