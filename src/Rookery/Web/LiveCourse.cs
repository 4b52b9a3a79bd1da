using Rookery.Courses;
using Rookery.Labs;
using Rookery.Lessons;
using Rookery.Notation;

namespace Rookery.Web;

/// <summary>Keeps a course built: whenever one of its files is saved, it is built again.</summary>
/// <remarks>
/// What counts is how the folder's files look, not that word came of them: one saving brings several words, and some
/// bring none. Only what changed is computed again.
/// </remarks>
internal sealed class LiveCourse
{
    private readonly string _path;
    private readonly BlockRunner _runner;
    private readonly App _app;
    private SiteSnapshot _built;
    private TaskCompletionSource _changed = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>Builds it for the first time.</summary>
    public LiveCourse(string path, BlockRunner runner, App app, Action<int, int>? done)
    {
        (_path, _runner, _app) = (path, runner, app);
        _built = Build(1, done);
        Now = _built;
    }

    /// <summary>The course as it is.</summary>
    public SiteSnapshot Now { get; private set; }

    /// <summary>Ends when the course is another than that of a version.</summary>
    public async Task WaitForOther(int version, CancellationToken stop)
    {
        while (Now.Version == version)
            await Volatile.Read(ref _changed).Task.WaitAsync(stop);
    }

    /// <summary>Follows the folder until stopped.</summary>
    public async Task Follow(CancellationToken stop)
    {
        using var watch = new FolderWatch(Folder);
        ulong seen = FolderLook.At(Folder);
        while (!stop.IsCancellationRequested)
        {
            await watch.Wait(stop);
            ulong now = FolderLook.At(Folder);
            if (now == seen)
                continue;
            seen = now;
            long start = _app.Clock.GetTimestamp();
            SiteSnapshot built = Build(Now.Version + 1, null);
            Now = built.WithPartsOf(_built);
            _built = built;
            TaskCompletionSource changed = _changed;
            Volatile.Write(ref _changed, new(TaskCreationOptions.RunContinuationsAsynchronously));
            changed.SetResult();
            Say(_app.Clock.GetElapsedTime(start));
        }
    }

    private void Say(TimeSpan took)
    {
        string problems = Now.ProblemCount == 0 ? ""
            : $", {Reports.Say.Count(Now.ProblemCount, "problem")} in the page";
        _app.Console.Out.WriteLine($"Built again in {Reports.Say.Decimal(took.TotalSeconds, 2)} s{problems}.");
        _app.Console.Out.Flush();
    }

    private SiteSnapshot Build(int version, Action<int, int>? done)
    {
        try
        {
            return SiteSnapshot.Of(version, CourseBuild.Of(
                _path, _runner, isLive: true, done, _app.Stop, LabFolder.IsExpected));
        }
        catch (InputException wrong)
        {
            var source = new SourceText("rookery", "");
            return SiteSnapshot.OfProblems(version, [.. wrong.Diagnostics.Select(one => new Problem(source, one))]);
        }
        catch (Exception files) when (files is IOException or UnauthorizedAccessException)
        {
            // An editor may be in the middle of saving: the next look finds it done.
            var source = new SourceText("rookery", "");
            return SiteSnapshot.OfProblems(version, [new(source, AppErrors.Files(files.Message))]);
        }
    }

    private string Folder => Directory.Exists(_path) ? _path : Path.GetDirectoryName(Path.GetFullPath(_path))!;
}
