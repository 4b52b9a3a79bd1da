using System.Collections.Immutable;
using System.Globalization;
using Rookery.Lessons.Blocks;
using Rookery.Lessons.Labs;
using Rookery.Lessons.Pages;

namespace Rookery.Lessons.Site;

/// <summary>All files of a published course.</summary>
public sealed class CourseSite
{
    private readonly SortedDictionary<string, SiteFile> _files = new(StringComparer.Ordinal);
    private readonly bool _isLive;
    private readonly bool _hasLab;

    private CourseSite(bool isLive, bool hasLab) => (_isLive, _hasLab) = (isLive, hasLab);

    /// <summary>The files that all courses share: style sheet, script, icon.</summary>
    /// <param name="isLive">Whether pages show each change by themselves.</param>
    public static IEnumerable<SiteFile> Shared(bool isLive)
    {
        yield return new TextFile("rookery.css", Asset("rookery.css"));
        yield return new TextFile("rookery.js", Asset("rookery.js"));
        yield return new TextFile("icon.svg", Asset("icon.svg"));
        if (isLive)
            yield return new TextFile("live.js", Asset("live.js"));
    }

    /// <summary>The page that lists the lessons.</summary>
    /// <param name="course">The course.</param>
    /// <param name="isLive">Whether it shows each change by itself.</param>
    /// <param name="hasLab">Whether the course comes with the lab.</param>
    public static TextFile IndexOf(Course course, bool isLive, bool hasLab = false) =>
        new("index.html", IndexPage.Of(course, isLive, hasLab));

    /// <summary>The files of one lesson.</summary>
    /// <param name="entry">The lesson.</param>
    /// <param name="course">Its course; null for a lesson on its own.</param>
    /// <param name="results">What its blocks came to, in their order.</param>
    /// <param name="files">The lesson's files.</param>
    /// <param name="isLive">Whether pages show each change by themselves.</param>
    /// <param name="hasLab">Whether the course comes with the lab, so that exhibits can be opened in it.</param>
    /// <returns>The files, and everything that keeps the lesson from being published.</returns>
    public static (ImmutableArray<SiteFile> Files, ImmutableArray<Problem> Problems) FilesOf(
        CourseEntry entry, Course? course, ImmutableArray<BlockResult> results, ILessonFiles files, bool isLive,
        bool hasLab = false)
    {
        var problems = ImmutableArray.CreateBuilder<Problem>();
        var site = new CourseSite(isLive, hasLab);
        site.AddLesson(entry, course, results, files, problems);
        return ([.. site._files.Values], problems.ToImmutable());
    }

    private void AddLesson(
        CourseEntry entry, Course? course, ImmutableArray<BlockResult> results, ILessonFiles files,
        ImmutableArray<Problem>.Builder problems)
    {
        Add(new TextFile(entry.Page, LessonPage.Of(entry, results, course, _isLive, problems, _hasLab)));
        for (int i = 0; i < results.Length; i++)
        {
            AddBlock(entry, entry.Lesson.Blocks[i], results[i]);
            AddLabStart(entry, entry.Lesson.Blocks[i], results[i], files);
        }

        AddImages(entry, files, problems);
        AddDeck(entry, results);
    }

    private void AddBlock(CourseEntry entry, LessonBlock block, BlockResult result)
    {
        string id = PageContext.IdOf(block);
        if (result.Player is { } player)
        {
            string part = $"parts/{entry.Slug}/{id}";
            Add(Script($"{part}.js", id, "talk", player.Talk, id));
            Add(Script($"{part}-wide.js", id, "wide", player.Wide, id + "-pw"));
            Add(Script($"{part}-narrow.js", id, "narrow", player.Narrow, id + "-pn"));
        }

        foreach (BlockFigure figure in result.Figures)
        {
            string path = $"figures/{entry.Slug}/{PageContext.FigureNameOf(block, figure)}";
            Add(new TextFile(path + ".svg", figure.Slide));
            Add(new PrintFile(path + ".png", figure.Slide, figure.Title));
            Add(new PrintFile(path + ".pdf", figure.Slide, figure.Title));
        }
    }

    private void AddLabStart(CourseEntry entry, LessonBlock block, BlockResult result, ILessonFiles files)
    {
        if (!_hasLab || block is not IStartsLab starts)
            return;
        string title = string.Create(
            CultureInfo.InvariantCulture, $"{entry.Lesson.Front.Title}, {block.Word} {block.Place.Number}");
        Add(new TextFile(
            PageContext.LabFileOf(entry.Slug, block), starts.StartOf(files, title, result.FirstStep).ToJson()));
    }

    // A plain call of a plain script: pages opened by a double click may load scripts, and nothing else, from beside
    // them.
    private static TextFile Script(string path, string id, string part, string json, string ids)
    {
        string own = json.Replace(BlockFigure.IdPrefix, ids + "-", StringComparison.Ordinal);
        return new(path, $"rookery.receive(\"{id}\", \"{part}\", {own});\n");
    }

    private void AddImages(CourseEntry entry, ILessonFiles files, ImmutableArray<Problem>.Builder problems)
    {
        foreach (string name in entry.Lesson.Images)
        {
            try
            {
                if (files.Read(name, LessonLimits.ImageBytesMax) is not { } bytes)
                    problems.Add(new(entry.Lesson.Source, LessonErrors.NoFile(default, name, files.Names())));
                else if (!ImageKinds.Fits(name, bytes))
                    problems.Add(new(entry.Lesson.Source, LessonErrors.BadImage(default, name)));
                else
                    Add(new BinaryFile($"parts/{entry.Slug}/{name}", bytes));
            }
            catch (Notation.InputException wrong)
            {
                problems.AddRange(wrong.Diagnostics.Select(one => new Problem(entry.Lesson.Source, one)));
            }
        }
    }

    private void AddDeck(CourseEntry entry, ImmutableArray<BlockResult> results)
    {
        var slides = ImmutableArray.CreateBuilder<DeckSlide>();
        for (int i = 0; i < results.Length; i++)
        {
            LessonBlock block = entry.Lesson.Blocks[i];
            foreach (BlockFigure figure in results[i].Figures)
                slides.Add(SlideOf(block, results[i], figure));
        }

        var front = entry.Lesson.Front;
        string minutes = front.Minutes > 0 ? PageShell.Minutes(front.Minutes) : "";
        string subtitle = string.Join(" · ", new[] { front.Audience, minutes }.Where(text => text.Length > 0));
        Add(new DeckFile($"slides/{entry.Slug}.pptx", front.Title, subtitle, slides.ToImmutable()));
    }

    private static DeckSlide SlideOf(LessonBlock block, BlockResult result, BlockFigure figure)
    {
        string title = figure.Moment.Length > 0
            ? string.Create(CultureInfo.InvariantCulture,
                $"{char.ToUpperInvariant(figure.Moment[0])}{figure.Moment[1..]}")
            : figure.Title;
        string notes = string.Join(
            "\n", new[] { block.Caption, figure.Narration, $"Computed: {result.MadeFrom}." }.Where(text =>
                text.Length > 0));
        return new(title, figure.Slide, figure.Description, notes);
    }

    private void Add(SiteFile file) => _files[file.Path] = file;

    private static string Asset(string name)
    {
        using Stream stream = typeof(CourseSite).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The part {name} is missing from the program.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
