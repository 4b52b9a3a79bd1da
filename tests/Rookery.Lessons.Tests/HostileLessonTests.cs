using System.Text;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using Rookery.Testing;

namespace Rookery.Lessons.Tests;

/// <summary>Lessons of strangers: they run no script, load nothing, read nothing else, and end.</summary>
public sealed class HostileLessonTests
{
    public static TheoryData<string> Attacks => [.. HostileHtml.Attacks];

    [Theory]
    [MemberData(nameof(Attacks))]
    public void Html_OfAStranger_NeitherRunsNorLoads(string attack)
    {
        Built built = Built.Of(Built.Lesson("Before.\n\n" + attack + "\n\nAfter."));
        using var context = new AngleSharp.BrowsingContext();
        IDocument page = new HtmlParser(default, context).ParseDocument(built.Page);

        Assert.Empty(built.Problems);
        Assert.Equal(["rookery.js"], page.Scripts.Select(script => script.GetAttribute("src")));
        Assert.Equal(["icon.svg", "rookery.css"], page.QuerySelectorAll("link").Select(link =>
            link.GetAttribute("href")));
        foreach (IElement element in page.QuerySelectorAll("body *"))
        {
            Assert.DoesNotContain(element.LocalName,
                (string[])["script", "iframe", "object", "embed", "style", "base", "form", "meta", "link", "svg",
                "math", "video", "audio", "template"]);
            Assert.All(element.Attributes, attribute =>
                Assert.False(attribute.Name.StartsWith("on", StringComparison.Ordinal), attribute.Name));
            Assert.False(element.HasAttribute("style"));
            Assert.False(element.HasAttribute("srcset"));
            string address = element.GetAttribute("href") ?? element.GetAttribute("src") ?? "";
            Assert.Matches("^(#.*|https?://.*|index\\.html|slides/.*|mailto:.*|)$", address);
            Assert.False(element.LocalName == "img", "a picture of nowhere");
            Assert.False(element.HasAttribute("data-files"));
        }

        Assert.Single(page.QuerySelectorAll("#rk-main"));
    }

    [Theory]
    [InlineData("../secret.png")]
    [InlineData("/etc/passwd.png")]
    [InlineData("%2e%2e/secret.png")]
    [InlineData("..%2fsecret.png")]
    [InlineData("a/../../secret.png")]
    [InlineData("https://evil.example/p.png")]
    [InlineData("//evil.example/p.png")]
    [InlineData("data:image/png;base64,AAAA")]
    [InlineData("..\\secret.png")]
    public void Image_OutsideOfTheFolder_IsRefusedAndNeverAskedFor(string address)
    {
        var files = new MemoryFiles();

        Built built = Built.Of(Built.Lesson($"![x](<{address}>)"), files);

        Assert.Equal(["LS013"], built.Codes);
        Assert.Empty(files.Asked);
    }

    [Fact]
    public void Data_OutsideOfTheFolder_IsNeverAskedFor()
    {
        const string program = "data d = \"../../secret.csv\" column \"us\"\ntask t()\n    work len(d)\nstart t()\n";
        var files = new MemoryFiles().Put("p/a.fj", program);

        Built built = Built.Of(Built.Exhibit("program: p/a.fj"), files);

        Assert.NotEmpty(built.Problems);
        Assert.All(files.Asked, name => Assert.True(FileNames.IsInside(name), name));
    }

    [Fact]
    public void Image_TooLarge_NoPicture_OrMissing_IsRefused()
    {
        byte[] large = new byte[LessonLimits.ImageBytesMax + 1];
        Assert.Equal(["XX001"], Built.Of(Built.Lesson("![x](a.png)"), new MemoryFiles().Put("a.png", large)).Codes);
        Assert.Equal(["LS015"], Built.Of(Built.Lesson("![x](a.png)"), new MemoryFiles().Put("a.png", "<html>")).Codes);
        Assert.Equal(["LS015"], Built.Of(Built.Lesson("![x](a.html)"), new MemoryFiles().Put("a.html", "x")).Codes);
        Assert.Equal(["LS014"], Built.Of(Built.Lesson("![x](a.png)")).Codes);
    }

    [Fact]
    public void Image_OfTheFolder_IsShown()
    {
        byte[] png = [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A];

        Built built = Built.Of(Built.Lesson("![A map](maps/coast%20line.png)"),
            new MemoryFiles().Put("maps/coast line.png", png));

        Assert.Empty(built.Problems);
        Assert.Contains("src=\"parts/lesson/maps/coast%20line.png\" alt=\"A map\"", built.Page,
            StringComparison.Ordinal);
        Assert.Contains(built.Files, file => file.Path == "parts/lesson/maps/coast line.png");
    }

    [Theory]
    [InlineData("task t()\n    call t()\nstart t()\n", "depth")]
    [InlineData("task t(n)\n    fork t(n + 1)\n    fork t(n + 2)\nstart t(0)\n", "limit")]
    [InlineData("task t()\n    for i in 0..9000000000000000000\n        let x = i\nstart t()\n", "limit")]
    [InlineData("task t()\n    for i in 0..100000000\n        work 1\nstart t()\n", "limit")]
    [InlineData("task leaf()\n    work 1\ntask t()\n    fork for i in 0..100000000000\n        call leaf()\nstart "
        + "t()\n", "limit")]
    public void Program_WithoutEnd_IsStoppedByANamedLimit(string program, string said)
    {
        Built built = Built.Of(Built.Exhibit("program: endless.fj"), new MemoryFiles().Put("endless.fj", program));

        Assert.NotEmpty(built.Problems);
        Assert.All(built.Problems, problem => Assert.True(problem.Diagnostic.IsLimit, problem.ToString()));
        Assert.Contains(said, built.Said, StringComparison.Ordinal);
    }

    [Fact]
    public void Yaml_Bombs_AreRefused()
    {
        var bomb = new StringBuilder("a: &a [x, x, x, x, x, x, x, x, x]\n");
        for (char c = 'b'; c <= 'i'; c++)
            bomb.Append(System.Globalization.CultureInfo.InvariantCulture,
                $"{c}: &{c} [*{(char)(c - 1)}, *{(char)(c - 1)}, *{(char)(c - 1)}, *{(char)(c - 1)}]\n");
        Assert.Equal(["LS005"], Built.Of(Built.Exhibit(bomb.ToString().TrimEnd())).Codes);
        Assert.Equal(["LS006"], Built.Of(Built.Exhibit("a: " + new string('[', 3_000))).Codes);
        Assert.Equal(["LS006"], Built.Of(Built.Exhibit("a: [" + string.Join(',', Enumerable.Repeat("x", 5_000))
            + "]")).Codes);
        Assert.Equal(["LS006"], Built.Of(Built.Exhibit("a: " + new string('x', 20_000))).Codes);
        Assert.NotEmpty(LessonReader.Read("a.md", "---\n" + bomb + "---\n").Diagnostics);
    }

    [Fact]
    public void Text_DeepLongOrFull_IsRefusedByANamedLimit()
    {
        Assert.Equal(["LS019"], Built.Of(Built.Lesson(new string('>', 20_000) + " x")).Codes);
        Assert.Equal(["LS019"], Built.Of(Built.Lesson(string.Concat(Enumerable.Repeat("<div>", 5_000)))).Codes);
        Assert.Equal(["LS019"], Built.Of(Built.Lesson(
            string.Concat(Enumerable.Range(0, 3_000).Select(i => $"<p><b title={i}>")))).Codes);
        Assert.Equal(["LS001"], Built.Of(Built.Lesson(new string('x', LessonLimits.TextMax))).Codes);
        string blocks = string.Concat(Enumerable.Repeat("```exhibit\nprogram: count.fj\n```\n\n", 70));
        Assert.Equal(["LS018"], Built.Of(Built.Lesson(blocks)).Codes);
    }

    [Fact]
    public void Labels_OfPrograms_CannotLeaveThePlayersScript()
    {
        Built built = Built.Of(Built.Exhibit("program: count.fj\ncaption: '</script><img src=x onerror=alert(1)>'"));

        Assert.Contains("&lt;/script&gt;", built.Page, StringComparison.Ordinal);
        Assert.StartsWith("rookery.receive(\"rk-exhibit-1\", \"talk\", {", built.Text("parts/lesson/rk-exhibit-1.js"),
            StringComparison.Ordinal);
    }

    [Fact]
    public void Mark_OfABlock_CannotBeForged()
    {
        string text = Built.Exhibit("program: count.fj", "rk-1 <p>rk-1</p>");

        Assert.Single(new HtmlParser().ParseDocument(Built.Of(text).Page).QuerySelectorAll(".rk-block"));
    }
}
