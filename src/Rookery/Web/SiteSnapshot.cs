using System.Collections.Immutable;
using Rookery.Courses;
using Rookery.Lessons.Pages;
using Rookery.Lessons.Site;

namespace Rookery.Web;

/// <summary>A course as it is served at one time. Immutable.</summary>
/// <param name="Version">Counts the builds, from 1.</param>
/// <param name="Files">Its files by path.</param>
/// <param name="ProblemCount">How many things are wrong.</param>
internal sealed record SiteSnapshot(int Version, ImmutableSortedDictionary<string, SiteFile> Files, int ProblemCount)
{
    private const string Parts = "parts/";

    /// <summary>Of a build; what cannot be shown has a page that says why.</summary>
    public static SiteSnapshot Of(int version, CourseBuild build)
    {
        var files = ImmutableSortedDictionary.CreateBuilder<string, SiteFile>(StringComparer.Ordinal);
        foreach (SiteFile file in SharedFiles.All(isLive: true))
            files[file.Path] = file;
        if (build.Loaded.Course is { } course)
        {
            files["index.html"] = build.Loaded.Problems.IsEmpty
                ? CourseSite.IndexOf(course, isLive: true, build.HasLab)
                : new TextFile("index.html", ProblemPage.Of("index.md", build.Loaded.Problems));
        }

        foreach (BuiltLesson lesson in build.Lessons)
        {
            if (lesson.Problems.Length > 0)
            {
                string name = Path.GetFileName(lesson.Loaded.Path);
                files[lesson.Loaded.Page] = new TextFile(lesson.Loaded.Page, ProblemPage.Of(name, lesson.Problems));
            }

            foreach (SiteFile file in lesson.Files)
                files[file.Path] = file;
        }

        return new(version, files.ToImmutable(), build.Problems.Length);
    }

    /// <summary>
    /// This one, and what only the one before it has: a page that was opened before the course was built again still
    /// asks for its own figures and players. Pages that are gone are gone.
    /// </summary>
    /// <param name="before">The snapshot as it was built, without what it was given of still earlier ones.</param>
    public SiteSnapshot WithPartsOf(SiteSnapshot before)
    {
        var files = Files.ToBuilder();
        foreach ((string path, SiteFile file) in before.Files)
        {
            if (path.StartsWith(Parts, StringComparison.Ordinal))
                files.TryAdd(path, file);
        }

        return this with { Files = files.ToImmutable() };
    }

    /// <summary>When the whole course cannot be read: one page that says why.</summary>
    public static SiteSnapshot OfProblems(int version, ImmutableArray<Lessons.Problem> problems)
    {
        var files = SharedFiles.All(isLive: true).ToImmutableSortedDictionary(
            file => file.Path, file => file, StringComparer.Ordinal);
        return new(
            version, files.SetItem("index.html", new TextFile("index.html", ProblemPage.Of("Lessons", problems))),
            problems.Length);
    }
}
