using System.Collections.Immutable;
using System.CommandLine;
using Rookery.CommandLine;
using Rookery.Courses;
using Rookery.Notation;
using Rookery.Terminal;
using Rookery.Web;

namespace Rookery.Commands;

/// <summary><c>serve [PATH]</c>: lessons in the browser of this computer, built again whenever one is saved.</summary>
internal sealed class ServeVerb : Verb
{
    private readonly Option<string?> _port;
    private readonly CacheOptions _cache;

    /// <summary>Makes the command.</summary>
    public ServeVerb()
        : this(OptionValues.Text("--port", "NUMBER", "The port on this computer; a free one by default."), new())
    {
    }

    private ServeVerb(Option<string?> port, CacheOptions cache)
        : base(
            "serve", "Show lessons in the browser, built again when you save.", Arguments.LessonsOrNone,
            [new("Where", [port]), cache.Group]) =>
        (_port, _cache) = (port, cache);

    /// <inheritdoc/>
    public override string Heading => "Teach";

    /// <inheritdoc/>
    public override ImmutableArray<(string Line, string Use)> Examples =>
    [
        ("serve stealing.md", "Write a lesson with its page beside the editor."),
        ("serve", "The demo course."),
    ];

    /// <inheritdoc/>
    public override ExitCode Execute(ParseResult parsed, App app)
    {
        int port = (int)(parsed.WholeOf(_port, 0, ushort.MaxValue) ?? 0);
        string path = parsed.GetValue(Argument!) ?? app.LessonsFolder;
        if (!Directory.Exists(path) && !File.Exists(path))
            throw new InputException(AppErrors.NoLessonAt(path));
        ContentCache cache = _cache.Make(parsed);
        LiveCourse course;
        using (ProgressLine progress = app.StartProgress())
        {
            course = new LiveCourse(
                path, new BlockRunner(cache), app, (done, all) => progress.Report(done, all, "exhibits"));
        }

        cache.Prune();
        Serve(course, cache, port, address => Say(app, course, path, address), app.Stop).GetAwaiter().GetResult();
        return ExitCode.Done;
    }

    private static async Task Serve(
        LiveCourse course, ContentCache cache, int port, Action<string> started, CancellationToken stop)
    {
        using var printer = new SitePrinter(cache);
        await LessonServer.Run(course, printer, port, started, stop);
    }

    private static void Say(App app, LiveCourse course, string path, string address)
    {
        TextWriter output = app.Console.Out;
        output.WriteLine($"The lessons of {path} are at {address}/");
        if (course.Now.ProblemCount > 0)
            output.WriteLine($"{Reports.Say.Count(course.Now.ProblemCount, "problem")}: the page says which.");
        output.WriteLine("They are built again whenever a file is saved. Ctrl+C ends this.");
        output.Flush();
    }
}
