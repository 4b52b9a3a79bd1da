using System.Diagnostics;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Validation;

namespace Rookery.Tests.Commands;

/// <summary><c>publish</c>: whole folders, the same bytes, valid slides, and nothing computed twice.</summary>
public sealed class PublishTests
{
    private const string Lesson = """
        ---
        title: One lesson & more
        audience: anybody
        minutes: 5
        ---

        Words.

        ```exhibit
        program: count.fj
        machine: unit
        show: [deques, timeline]
        stop: [first fork, first steal]
        caption: What "waits" <here>
        expect: finished
        ```

        There were {= steals } steals.
        """;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public void Publish_Twice_IsTheSameBytes()
    {
        using var run = Lessons();

        Assert.Equal(0, Publish(run, "one", "--no-cache"));
        Assert.Equal(0, Publish(run, "two", "--no-cache"));

        string[] names = FilesOf(run.PathOf("one"));
        Assert.Equal(names, FilesOf(run.PathOf("two")));
        Assert.All(names, name => Assert.Equal(
            File.ReadAllBytes(Path.Combine(run.PathOf("one"), name)),
                File.ReadAllBytes(Path.Combine(run.PathOf("two"), name))));
    }

    [Fact]
    public void Publish_Slides_AreValid()
    {
        using var run = Lessons();
        Assert.Equal(0, Publish(run, "out", "--no-cache"));

        using var deck = PresentationDocument.Open(run.PathOf("out/slides/a.pptx"), isEditable: false);
        var validator = new OpenXmlValidator(FileFormatVersions.Office2019);
        Assert.Empty(validator.Validate(deck, Stop).Select(one => $"{one.Path?.XPath} {one.Description}"));
        PresentationPart presentation = deck.PresentationPart!;
        Assert.Equal(4, presentation.SlideParts.Count());
        Assert.Equal(3, presentation.SlideParts.Count(slide =>
            slide.NotesSlidePart?.NotesSlide?.InnerText.Contains("Computed: count.fj", StringComparison.Ordinal)
                == true));
        SlidePart[] figures = [.. presentation.SlideParts.Where(slide => slide.ImageParts.Any())];
        Assert.Equal(3, figures.Length);
        Assert.All(figures, HasDrawingAndPicture);
        Assert.Equal(3, presentation.SlideParts.SelectMany(slide =>
            slide.Slide!.Descendants<DocumentFormat.OpenXml.Presentation.Picture>())
            .Count(picture =>
                picture.NonVisualPictureProperties!.NonVisualDrawingProperties!.Description!.Value!.Length > 20));
    }

    // A program that knows SVG shows the drawing, every other one the picture beside it.
    private static void HasDrawingAndPicture(SlidePart slide)
    {
        var blip = Assert.Single(slide.Slide!.Descendants<DocumentFormat.OpenXml.Drawing.Blip>());
        var drawing = Assert.Single(slide.Slide!.Descendants<DocumentFormat.OpenXml.Office2019.Drawing.SVG.SVGBlip>());
        OpenXmlPart picture = slide.GetPartById(blip.Embed!.Value!), svg = slide.GetPartById(drawing.Embed!.Value!);
        Assert.Equal(("image/png", "image/svg+xml"), (picture.ContentType, svg.ContentType));
        Assert.EndsWith(".svg", svg.Uri.ToString(), StringComparison.Ordinal);
        using Stream text = svg.GetStream();
        Assert.Equal("svg", System.Xml.Linq.XDocument.Load(text).Root!.Name.LocalName);
    }

    [Fact]
    public void Publish_OneWordEdited_ComputesNothingAgain()
    {
        using var run = Lessons();
        string cache = run.PathOf("cache");
        Assert.Equal(0, Publish(run, "out", "--cache", cache, "--json"));
        Assert.Contains("\"computed\": 1", run.Output, StringComparison.Ordinal);

        run.Put("lessons/a.md", Lesson.Replace("Words.", "Other words.", StringComparison.Ordinal));
        Assert.Equal(0, Publish(run, "out", "--cache", cache, "--json"));

        Assert.Contains("\"computed\": 0", run.Output, StringComparison.Ordinal);
        Assert.Contains("Other words.", File.ReadAllText(run.PathOf("out/a.html")), StringComparison.Ordinal);
    }

    [Fact]
    public void Publish_DamagedCache_IsComputedAgain()
    {
        using var run = Lessons();
        string cache = run.PathOf("cache");
        Assert.Equal(0, Publish(run, "one", "--cache", cache));
        foreach (string file in Directory.EnumerateFiles(cache, "*", SearchOption.AllDirectories).ToArray())
        {
            if (File.ReadAllText(file).StartsWith('{'))
                File.WriteAllText(file, "{ \"Figures\": ");
        }

        Assert.Equal(0, Publish(run, "two", "--cache", cache, "--json"));

        Assert.Contains("\"computed\": 1", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Publish_MissedExpectation_IsNoAndLeavesTheOldFolder()
    {
        using var run = Lessons();
        Assert.Equal(0, Publish(run, "out", "--no-cache"));
        string[] before = FilesOf(run.PathOf("out"));

        run.Put("lessons/a.md", Lesson.Replace("expect: finished", "expect: steals > 1000", StringComparison.Ordinal));
        Assert.Equal(1, Publish(run, "out", "--no-cache"));

        Assert.Contains("a.md:15:9: error LS040", run.Errors, StringComparison.Ordinal);
        Assert.Equal(before, FilesOf(run.PathOf("out")));
    }

    [Fact]
    public void Publish_FolderOfOthers_IsLeftAlone()
    {
        using var run = Lessons();
        run.Put("mine/thesis.txt", "all my work");

        Assert.Equal(2, Publish(run, "mine", "--no-cache"));
        Assert.Contains("AP041", run.Errors, StringComparison.Ordinal);
        Assert.Equal(2, Publish(run, "lessons", "--no-cache"));
        Assert.Equal("all my work", File.ReadAllText(run.PathOf("mine/thesis.txt")));
    }

    [Theory]
    [InlineData("gone", "AP044")]
    [InlineData("empty", "AP040")]
    public void Publish_NoLesson_SaysSo(string path, string code)
    {
        using var run = Lessons();
        run.Put("empty/readme.md", "No lesson.");

        Assert.Equal(2, run.Run("publish", run.PathOf(path), "--out", run.PathOf("out"), "--no-cache"));
        Assert.Contains(code, run.Errors, StringComparison.Ordinal);
        Assert.Equal(2, run.Run("publish", run.PathOf("lessons")));
        Assert.Contains("AP042", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Publish_LinkOutOfTheFolder_IsRefused()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Links need rights of their own there.");
        using var run = Lessons();
        run.Put("secret.fj", TestRun.Count);
        File.CreateSymbolicLink(run.PathOf("lessons/link.fj"), run.PathOf("secret.fj"));
        run.Put("lessons/a.md", Lesson.Replace("program: count.fj", "program: link.fj", StringComparison.Ordinal));

        Assert.Equal(2, Publish(run, "out", "--no-cache"));
        Assert.Contains("AP006", run.Errors, StringComparison.Ordinal);
    }

    // A real process, killed at a different place each time: whoever looks finds the old course or the new one, whole.
    [Fact]
    public async Task Publish_KilledAtAnyTime_LeavesOldOrNew()
    {
        using var run = Lessons();
        string cache = run.PathOf("cache"), target = run.PathOf("out");
        Assert.Equal(0, Publish(run, "out", "--cache", cache));
        string[] names = FilesOf(target);
        for (int round = 0; round < 5; round++)
        {
            string word = $"Round{round}";
            run.Put("lessons/a.md", Lesson.Replace("Words.", word, StringComparison.Ordinal));
            string old = await File.ReadAllTextAsync(Path.Combine(target, "a.html"), Stop);
            using Process process = Start(run, "publish", run.PathOf("lessons"), "--out", target, "--cache", cache);
            string part = Path.Combine(run.Folder, $".out.{process.Id}.part");
            while (!process.HasExited && !(Directory.Exists(part) && FilesOf(part).Length >= round * 5))
                await Task.Yield();
            process.Kill();
            await process.WaitForExitAsync(Stop);

            Assert.Equal(names, FilesOf(target));
            string now = await File.ReadAllTextAsync(Path.Combine(target, "a.html"), Stop);
            Assert.True(now == old || now.Contains(word, StringComparison.Ordinal));
        }

        Assert.Equal(0, Publish(run, "out", "--cache", cache));
        Assert.DoesNotContain(run.Files(), name => name.EndsWith(".part", StringComparison.Ordinal));
    }

    internal static TestRun Lessons()
    {
        var run = new TestRun();
        run.Put("lessons/count.fj", TestRun.Count);
        run.Put("lessons/a.md", Lesson);
        run.Put("lessons/index.md", "---\ntitle: Course\n---\n\nSee [the first](a.md).\n");
        return run;
    }

    internal static Process Start(TestRun run, params string[] words)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, WorkingDirectory = run.Folder };
        start.ArgumentList.Add(typeof(App).Assembly.Location);
        foreach (string word in words)
            start.ArgumentList.Add(word);
        return Process.Start(start)!;
    }

    private static int Publish(TestRun run, string target, params string[] more) =>
        run.Run(["publish", run.PathOf("lessons"), "--out", run.PathOf(target), .. more]);

    private static string[] FilesOf(string folder) =>
    [
        .. Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Select(path => Path.GetRelativePath(folder, path)).Order(StringComparer.Ordinal),
    ];
}
