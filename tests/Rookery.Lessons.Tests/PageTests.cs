using System.Text.Json;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using Rookery.Lessons.Site;

namespace Rookery.Lessons.Tests;

/// <summary>Pages as a strict reader of HTML sees them (AngleSharp): no error, no dead link, words for every
/// picture.</summary>
public sealed class PageTests
{
    private static readonly Built Whole = Built.Of(Built.Exhibit(
        "program: count.fj\nworkers: 3\nmachine: unit\nseed: 7\nstop: [first fork, first steal, end]\ncaption: A & "
            + "B < C\n"
            + "show: [deques, timeline, tree, stolen-work, steals, speed-up, program, measures, laws]",
        "# One\n\n## Two & three\n\nSee [one](#one) and [the list](index.md).\n\n| a | b |\n|---|---|\n| 1 | {= "
            + "steals } |\n\n"
            + "A claim.[^1]\n\n[^1]: A paper.\n\n```exhibit\nprogram: count.fj\nworkers: 1\n```"));

    [Fact]
    public void Page_ParsedStrictly_HasNoError()
    {
        Assert.Empty(Whole.Problems);
        var errors = new List<string>();
        var parser = new HtmlParser(new HtmlParserOptions { IsStrictMode = false });
        parser.Error += (_, error) => errors.Add(((AngleSharp.Html.Dom.Events.HtmlErrorEvent)error).Message);
        parser.ParseDocument(Whole.Page);
        Assert.Empty(errors);
        using IDocument strict = new HtmlParser(new HtmlParserOptions { IsStrictMode = true }).ParseDocument(
            Whole.Page);
        Assert.Equal("Test", strict.Title);
    }

    [Fact]
    public void Page_Ids_AreUnique_AndEveryReferenceHasOne()
    {
        using IDocument page = new HtmlParser().ParseDocument(Whole.Page);
        string[] ids = [.. page.QuerySelectorAll("[id]").Select(one => one.Id!)];

        Assert.Equal(ids.Length, ids.Distinct().Count());
        foreach (IElement one in page.QuerySelectorAll("[aria-labelledby]"))
            Assert.All(one.GetAttribute("aria-labelledby")!.Split(' '), id => Assert.Contains(id, ids));
        foreach (IElement one in page.QuerySelectorAll("[fill^='url']"))
            Assert.Contains(one.GetAttribute("fill")![5..^1], ids);
    }

    [Fact]
    public void Page_Links_AllResolve()
    {
        using IDocument page = new HtmlParser().ParseDocument(Whole.Page);
        string[] paths = [.. Whole.Files.Select(file => file.Path), .. CourseSite.Shared(false).Select(file =>
            file.Path), "index.html"];
        string[] ids = [.. page.QuerySelectorAll("[id]").Select(one => one.Id!)];

        Assert.NotEmpty(page.QuerySelectorAll("a[href]"));
        foreach (IElement one in page.QuerySelectorAll("[href], [src]"))
        {
            string address = one.GetAttribute("href") ?? one.GetAttribute("src")!;
            if (address.StartsWith('#'))
                Assert.Contains(address[1..], ids);
            else if (!address.Contains("://", StringComparison.Ordinal))
                Assert.Contains(Uri.UnescapeDataString(address.Split('#')[0]), paths);
        }

        foreach (IElement player in page.QuerySelectorAll("[data-files]"))
        {
            foreach (string ending in (string[])[".js", "-wide.js", "-narrow.js"])
                Assert.Contains(player.GetAttribute("data-files") + ending, paths);
        }
    }

    [Fact]
    public void Page_Policy_PermitsNothingFromElsewhere()
    {
        using IDocument page = new HtmlParser().ParseDocument(Whole.Page);
        string policy = page.QuerySelector("meta[http-equiv]")!.GetAttribute("content")!;

        Assert.StartsWith("default-src 'none'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("http", policy, StringComparison.Ordinal);
        Assert.All(page.Scripts, script => Assert.Empty(script.Text));
        Assert.Empty(page.QuerySelectorAll("[style], style"));
    }

    [Fact]
    public void Figures_HaveWords_MadeFromTheNarration()
    {
        using IDocument page = new HtmlParser().ParseDocument(Whole.Page);

        foreach (IElement svg in page.QuerySelectorAll("figure svg"))
        {
            Assert.NotEmpty(svg.QuerySelector("title")!.TextContent);
            Assert.NotEmpty(svg.QuerySelector("desc")!.TextContent);
        }

        string steal = page.QuerySelectorAll("figure.rk-moment")[1].QuerySelector("desc")!.TextContent;
        Assert.Contains("from worker 0: the oldest of", steal, StringComparison.Ordinal);
        Assert.Contains("Worker 2", steal, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Index_ListsTheLessons()
    {
        Lesson lesson = LessonReader.Read("a.md", "---\ntitle: A <b>\nminutes: 1\nsummary: S\n---\n").OrThrow();
        Lesson intro = LessonReader.Read("index.md",
            "---\ntitle: Course\n---\n\nHello **there** <script>x</script>.\n").OrThrow();
        string page = CourseSite.IndexOf(new Course("Course", intro, [new("a", "a.html", lesson)]), false).Text;

        using IDocument read = new HtmlParser(new HtmlParserOptions { IsStrictMode = true }).ParseDocument(page);
        Assert.Equal("A <b>", read.QuerySelector(".rk-lessons a strong")!.TextContent);
        Assert.Equal("there", read.QuerySelector("main strong")!.TextContent);
        Assert.Contains("1 minute", read.Body!.TextContent, StringComparison.Ordinal);
        Assert.Single(read.Scripts);
        Assert.Empty(read.QuerySelectorAll("a[href^=lab]"));
    }

    [Fact]
    public void Index_OfACourseWithTheLab_LeadsThere()
    {
        string page = CourseSite.IndexOf(new Course("Course", null, []), false, hasLab: true).Text;

        using IDocument read = new HtmlParser(new HtmlParserOptions { IsStrictMode = true }).ParseDocument(page);
        Assert.Equal("lab/index.html", read.QuerySelector("main a")!.GetAttribute("href"));
    }

    // The player's own way of reading, written once more: whatever it shows is what the writer of figures wrote.
    [Fact]
    public void Player_Frames_AreThePicturesOfTheRun()
    {
        string script = Whole.Text("parts/lesson/rk-exhibit-1-wide.js");
        using var json = JsonDocument.Parse(script[script.IndexOf('{', StringComparison.Ordinal)..^3]);
        string[] table = [.. json.RootElement.GetProperty("lines").EnumerateArray().Select(one => one.GetString()!)];
        int every = json.RootElement.GetProperty("every").GetInt32();
        string[] lines = [];
        int frames = 0;
        foreach (JsonElement frame in json.RootElement.GetProperty("frames").EnumerateArray())
        {
            if (frames++ % every == 0)
                lines = [];
            lines = Next(frame, lines, table);
            string svg = $"<svg xmlns=\"http://www.w3.org/2000/svg\">{string.Concat(lines)}</svg>";
            Assert.Equal("svg", System.Xml.Linq.XDocument.Parse(svg).Root!.Name.LocalName);
        }

        Assert.Equal(Whole.Results[0].Player!.Last - Whole.Results[0].Player!.First + 1, frames);
        Assert.Contains(lines, line => line.Contains("no task", StringComparison.Ordinal));
    }

    private static string[] Next(JsonElement frame, string[] before, string[] table)
    {
        var next = new List<string>();
        int from = 0;
        foreach (JsonElement word in frame.EnumerateArray())
        {
            if (word.ValueKind == JsonValueKind.String)
            {
                from += int.Parse(word.GetString()!, System.Globalization.CultureInfo.InvariantCulture);
            }
            else if (word.GetInt32() is var number && number < 0)
            {
                next.AddRange(before[from..(from - number)]);
                from -= number;
            }
            else
            {
                next.Add(table[number]);
            }
        }

        return [.. next];
    }
}
