using System.Collections.Immutable;
using System.CommandLine;
using Rookery.CommandLine;
using Rookery.Courses;
using Rookery.Files;
using Rookery.Json;
using Rookery.Labs;
using Rookery.Lessons.Site;
using Rookery.Notation;
using Rookery.Terminal;

namespace Rookery.Commands;

/// <summary><c>publish PATH --out DIR</c>: lessons become a folder of pages, figures and slides.</summary>
internal sealed class PublishVerb : Verb
{
    private readonly Option<string?> _out;
    private readonly CacheOptions _cache;
    private readonly Option<bool> _json;
    private readonly Option<bool> _withoutLab;

    /// <summary>Makes the command.</summary>
    public PublishVerb()
        : this(
            OptionValues.Text("--out", "FOLDER",
                "Where to; a folder that was published before is replaced as a whole."),
            new(), OptionValues.Flag("--json", "One object for other programs (docs/json.md), and nothing else."),
            OptionValues.Flag("--without-lab", "Leave out the lab, and with it the links that open exhibits in it."))
    {
    }

    private PublishVerb(Option<string?> target, CacheOptions cache, Option<bool> json, Option<bool> withoutLab)
        : base(
            "publish", "Make lessons into pages, figures and slides.", Arguments.Lessons,
            [new("What comes out", [target, withoutLab, json]), cache.Group]) =>
        (_out, _cache, _json, _withoutLab) = (target, cache, json, withoutLab);

    /// <inheritdoc/>
    public override string Heading => "Teach";

    /// <inheritdoc/>
    public override ImmutableArray<(string Line, string Use)> Examples =>
    [
        ("publish lessons --out site", "A course that opens by a double click or from any web server."),
        ("publish stealing.md --out tomorrow", "One lesson, with its slides and every figure as SVG, PNG and PDF."),
    ];

    /// <inheritdoc/>
    public override ExitCode Execute(ParseResult parsed, App app)
    {
        string path = parsed.GetValue(Argument!)!;
        string folder = parsed.GetValue(_out) ?? throw new InputException(AppErrors.MissingOut());
        WholeFolder.Check(folder);
        RefuseSource(path, folder);
        long start = app.Clock.GetTimestamp();
        ContentCache cache = _cache.Make(parsed);
        var runner = new BlockRunner(cache);
        using ProgressLine progress = app.StartProgress();
        LabFolder? lab = parsed.GetValue(_withoutLab) ? null : LabFolder.Find();
        CourseBuild build = CourseBuild.Of(
            path, runner, isLive: false, (done, all) => progress.Report(done, all, "blocks"), app.Stop,
            lab is not null);
        bool isGood = build.Problems.Length == 0;
        int files = isGood ? Write(folder, build, lab, cache, progress, app) : 0;
        cache.Prune();
        progress.Dispose();
        double seconds = app.Clock.GetElapsedTime(start).TotalSeconds;
        CourseProblems.Write(app, build.Problems);
        if (parsed.GetValue(_json))
            app.Console.Out.Write(CourseJson.Of(
                build, folder, isGood, lab?.Bytes ?? 0, runner.Computed, seconds));
        else if (isGood)
        {
            Say(app, build, folder, files, runner.Computed, seconds);
            SayLab(app, lab, parsed.GetValue(_withoutLab));
        }

        return CourseProblems.CodeOf(build.Problems);
    }

    private static int Write(
        string folder, CourseBuild build, LabFolder? lab, ContentCache cache, ProgressLine progress, App app)
    {
        SiteFile[] files = [.. FilesOf(build)];
        using var printer = new SitePrinter(cache);
        WholeFolder.Write(folder, part =>
        {
            int done = 0;
            var order = new ParallelOptions
            {
                CancellationToken = app.Stop,
                MaxDegreeOfParallelism = Environment.ProcessorCount,
            };
            Parallel.ForEach(files, order, file =>
            {
                string path = Path.Combine(part, file.Path.Replace('/', Path.DirectorySeparatorChar));
                Directory.CreateDirectory(Path.GetDirectoryName(path)!);
                File.WriteAllBytes(path, printer.BytesOf(file).Span);
                lock (files)
                    progress.Report(++done, files.Length, "files");
            });
            lab?.CopyTo(Path.Combine(part, "lab"), app.Stop);
        });
        return files.Length + (lab?.Names.Length ?? 0);
    }

    private static IEnumerable<SiteFile> FilesOf(CourseBuild build)
    {
        foreach (SiteFile file in SharedFiles.All(isLive: false))
            yield return file;
        if (build.Loaded.Course is { } course)
            yield return CourseSite.IndexOf(course, isLive: false, build.HasLab);
        foreach (SiteFile file in build.Lessons.SelectMany(lesson => lesson.Files))
            yield return file;
        yield return new TextFile(WholeFolder.Marker, CourseJson.Contents(build));
    }

    private static void RefuseSource(string path, string folder)
    {
        string source = Path.GetFullPath(Directory.Exists(path) ? path
            : Path.GetDirectoryName(Path.GetFullPath(path))!);
        if (Path.TrimEndingDirectorySeparator(source) == Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder)))
            throw new InputException(AppErrors.OutIsSource(folder));
    }

    private static void Say(App app, CourseBuild build, string folder, int files, int computed, double seconds)
    {
        int blocks = build.Lessons.Sum(lesson => lesson.Results.Length);
        app.Console.Out.WriteLine(
            $"{Reports.Say.Count(build.Lessons.Length, "lesson")} with {Reports.Say.Count(blocks, "block")} "
            + $"({Reports.Say.Whole(computed)} computed anew) in {Reports.Say.Count(files, "file")}, "
            + $"{Reports.Say.Decimal(seconds, 1)} s.");
        app.Console.Out.WriteLine($"Open {Path.Combine(folder, "index.html")}");
    }

    private static void SayLab(App app, LabFolder? lab, bool isLeftOut)
    {
        if (lab is not null)
        {
            app.Console.Out.WriteLine(
                $"The lab is in {lab.Names.Length} of these files, {Reports.Say.Decimal(lab.Bytes / 1e6, 1)} MB; "
                + "it needs a web server, and --without-lab leaves it out.");
        }
        else if (!isLeftOut)
        {
            app.Console.Out.WriteLine("The lab is not among them: this program was built without it (docs/lab.md).");
        }
    }
}
