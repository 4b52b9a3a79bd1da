using System.Collections.Immutable;
using Rookery.Lessons;
using Rookery.Lessons.Blocks;
using Rookery.Lessons.Site;

namespace Rookery.Courses;

/// <summary>A course, built: the files of each lesson, or what is wrong with it.</summary>
/// <param name="Loaded">What was read.</param>
/// <param name="Lessons">For each lesson, in order.</param>
/// <param name="HasLab">Whether the course comes with the lab.</param>
internal sealed record CourseBuild(LoadedCourse Loaded, ImmutableArray<BuiltLesson> Lessons, bool HasLab)
{
    /// <summary>Everything that is wrong.</summary>
    public ImmutableArray<Problem> Problems => [.. Loaded.Problems, .. Lessons.SelectMany(one => one.Problems)];

    /// <summary>Builds.</summary>
    /// <param name="path">A lesson or a folder.</param>
    /// <param name="runner">Computes blocks.</param>
    /// <param name="isLive">Whether pages show each change by themselves.</param>
    /// <param name="done">Told of each block that is done.</param>
    /// <param name="stop">Stops.</param>
    /// <param name="hasLab">Whether the course comes with the lab.</param>
    public static CourseBuild Of(
        string path, BlockRunner runner, bool isLive, Action<int, int>? done, CancellationToken stop,
        bool hasLab = false)
    {
        LoadedCourse loaded = LoadedCourse.Load(path);
        var files = new LessonFolder(loaded.Folder);
        LoadedLesson[] good = [.. loaded.Lessons.Where(lesson => lesson.Entry is not null)];
        ImmutableArray<ImmutableArray<BlockOutcome>> outcomes =
            runner.Run([.. good.Select(lesson => lesson.Entry!.Lesson)], files, done, stop);
        var built = ImmutableArray.CreateBuilder<BuiltLesson>();
        int at = 0;
        foreach (LoadedLesson lesson in loaded.Lessons)
        {
            built.Add(lesson.Entry is null
                ? new(lesson, [], [], lesson.Problems)
                : Assemble(lesson, loaded.Course, outcomes[at++], files, isLive, hasLab));
        }

        return new(loaded, built.ToImmutable(), hasLab);
    }

    private static BuiltLesson Assemble(
        LoadedLesson lesson, Course? course, ImmutableArray<BlockOutcome> outcomes, ILessonFiles files, bool isLive,
        bool hasLab)
    {
        ImmutableArray<Problem> problems = [.. outcomes.SelectMany(one => one.Problems)];
        if (problems.Length > 0)
            return new(lesson, [], [], problems);
        ImmutableArray<BlockResult> results = [.. outcomes.Select(one => one.Result!)];
        (ImmutableArray<SiteFile> made, problems) = CourseSite.FilesOf(
            lesson.Entry!, course, results, files, isLive, hasLab);
        return new(lesson, results, problems.Length > 0 ? [] : made, problems);
    }
}
