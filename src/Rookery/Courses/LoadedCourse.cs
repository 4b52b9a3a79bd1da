using System.Collections.Immutable;
using Rookery.Files;
using Rookery.Lessons;
using Rookery.Lessons.Reading;
using Rookery.Notation;

namespace Rookery.Courses;

/// <summary>A lesson, or a folder of them, as read from disk.</summary>
/// <param name="Folder">Where the lessons and their files lie.</param>
/// <param name="Lessons">The lessons, in the order of their names.</param>
/// <param name="Course">The course of those that are in order; null for a lesson on its own.</param>
/// <param name="Problems">What is wrong with the introduction.</param>
internal sealed record LoadedCourse(
    string Folder, ImmutableArray<LoadedLesson> Lessons, Course? Course, ImmutableArray<Problem> Problems)
{
    private const string IndexName = "index.md";
    private const int LessonBytesMax = 4 << 20;

    /// <summary>Everything that is wrong.</summary>
    public IEnumerable<Problem> AllProblems => Problems.Concat(Lessons.SelectMany(lesson => lesson.Problems));

    /// <summary>Reads a lesson or a folder.</summary>
    /// <param name="path">Either.</param>
    /// <exception cref="InputException">There is nothing there.</exception>
    public static LoadedCourse Load(string path)
    {
        if (Directory.Exists(path))
            return LoadFolder(path);
        if (!File.Exists(path))
            throw new InputException(AppErrors.NoLessonAt(path));
        return new(
            Path.GetDirectoryName(Path.GetFullPath(path))!, [Read(path, "index.html")], null, []);
    }

    private static LoadedCourse LoadFolder(string folder)
    {
        string[] names = [.. Directory.EnumerateFiles(folder, "*.md").Select(name => Path.GetFileName(name)).Order(
            StringComparer.Ordinal)];
        var lessons = ImmutableArray.CreateBuilder<LoadedLesson>();
        foreach (string name in names.Where(name => name != IndexName))
        {
            string path = Path.Combine(folder, name);
            if (IsLesson(path))
                lessons.Add(Read(path, Path.GetFileNameWithoutExtension(name) + ".html"));
        }

        if (lessons.Count == 0)
            throw new InputException(AppErrors.NoLessons(folder));
        LoadedLesson? index = names.Contains(IndexName) ? Read(Path.Combine(folder, IndexName), "index.html") : null;
        string title = index?.Entry?.Lesson.Front.Title ?? "Lessons";
        var course = new Course(
            title, index?.Entry?.Lesson, [.. lessons.Select(one => one.Entry).OfType<CourseEntry>()]);
        return new(Path.GetFullPath(folder), lessons.ToImmutable(), course, index?.Problems ?? []);
    }

    private static bool IsLesson(string path)
    {
        using var reader = new StreamReader(path);
        char[] start = new char[4];
        return reader.ReadBlock(start) == 4 && FrontMatter.IsAtTopOf(new string(start));
    }

    private static LoadedLesson Read(string path, string page)
    {
        string slug = Path.GetFileNameWithoutExtension(path);
        string text;
        try
        {
            text = BoundedText.Read(path, LessonBytesMax);
        }
        catch (InputException wrong)
        {
            return new(path, slug, page, null, [new(new SourceText(path, ""), wrong.Diagnostics[0])]);
        }

        Parsed<Lesson> lesson = LessonReader.Read(path, text);
        return lesson.IsValid
            ? new(path, slug, page, new(slug, page, lesson.Value), [])
            : new(path, slug, page, null, [.. lesson.Diagnostics.Select(one => new Problem(new(path, text), one))]);
    }
}
