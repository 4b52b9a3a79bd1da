using System.Collections.Immutable;
using Rookery.Lessons.Blocks;
using Rookery.Lessons.Site;

namespace Rookery.Lessons.Tests;

/// <summary>A lesson that went all the way, or as far as it came.</summary>
internal sealed record Built(ImmutableArray<SiteFile> Files, ImmutableArray<Problem> Problems,
    ImmutableArray<BlockResult> Results)
{
    public string Page => Text("lesson.html");

    /// <summary>The text of a file.</summary>
    public string Text(string path) => Files.OfType<TextFile>().Single(file => file.Path == path).Text;

    /// <summary>All problems as a reader sees them.</summary>
    public string Said => string.Concat(Problems.Select(problem => problem.ToString()));

    /// <summary>The codes of the problems.</summary>
    public IEnumerable<string> Codes => Problems.Select(problem => problem.Diagnostic.Code);

    /// <summary>Front matter and a body.</summary>
    public static string Lesson(string body) => $"---\ntitle: Test\n---\n\n{body}\n";

    /// <summary>A lesson with one exhibit of these fields.</summary>
    public static string Exhibit(string fields, string after = "") =>
        Lesson($"```exhibit\n{fields.ReplaceLineEndings("\n")}\n```\n\n{after}");

    /// <summary>Reads, computes and assembles.</summary>
    public static Built Of(string text, MemoryFiles? files = null, bool hasLab = false)
    {
        files ??= new();
        var read = LessonReader.Read("lesson.md", text);
        if (!read.IsValid)
            return new([], [.. read.Diagnostics.Select(one => new Problem(new("lesson.md", text), one))], []);
        BlockOutcome[] outcomes = [.. read.Value.Blocks.Select(block => block.Compute(files, null))];
        ImmutableArray<Problem> problems = [.. outcomes.SelectMany(one => one.Problems)];
        if (problems.Length > 0)
            return new([], problems, []);
        ImmutableArray<BlockResult> results = [.. outcomes.Select(one => one.Result!)];
        var entry = new CourseEntry("lesson", "lesson.html", read.Value);
        var course = new Course("A course", null, [entry]);
        (ImmutableArray<SiteFile> made, problems) = CourseSite.FilesOf(
            entry, course, results, files, isLive: false, hasLab);
        return new(made, problems, results);
    }
}
