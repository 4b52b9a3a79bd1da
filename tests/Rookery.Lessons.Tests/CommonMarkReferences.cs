using System.Collections.Immutable;
using System.Text.Json;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using Rookery.Lessons.Cleaning;
using Rookery.Lessons.Markdown;
using Rookery.Notation;

namespace Rookery.Lessons.Tests;

/// <summary>
/// The examples of the CommonMark specification 0.31.2 (Data/README.md): what a lesson makes of each is what the
/// specification says, cleaned.
/// </summary>
public sealed class CommonMarkReferences
{
    /// <summary>Examples that mean something else in lessons, since lessons have more than CommonMark.</summary>
    private static readonly ImmutableSortedDictionary<int, string> Extended = new Dictionary<int,
        string>().ToImmutableSortedDictionary();

    public static TheoryData<int> Numbers => [.. Examples.Keys];

    private static ImmutableSortedDictionary<int, (string Markdown, string Html)> Examples { get; } = Load();

    [Fact]
    public void Specification_IsComplete() => Assert.Equal(652, Examples.Count);

    [Theory]
    [MemberData(nameof(Numbers))]
    public void Example_OfTheSpecification_ReadsAsItSays(int number)
    {
        (string markdown, string html) = Examples[number];
        var errors = new DiagnosticList();
        string ours = new BodyRenderer(
                ImmutableDictionary<Markdig.Syntax.FencedCodeBlock, Blocks.LessonBlock>.Empty,
                new Dictionary<MeasureInline, string>(), "mark")
            .Render(LessonMarkdown.Read(markdown, errors)!);

        bool isSame = Normal(ours) == Normal(html);
        if (Extended.TryGetValue(number, out string? why))
            Assert.False(isSame, $"Example {number} reads as the specification says now: {why}");
        else
            Assert.Equal(Normal(html), Normal(ours));
    }

    // Cleaned on both sides, without the names that lessons give to headings, white space between elements being one.
    private static string Normal(string html)
    {
        string clean = HtmlCleaner.Clean(html, (address, _) => address);
        var document = new HtmlParser().ParseDocument(clean);
        foreach (IElement heading in document.QuerySelectorAll("h1, h2, h3, h4, h5, h6"))
            heading.RemoveAttribute("id");
        return document.Body!.InnerHtml.Replace(">\n<", "><", StringComparison.Ordinal).Trim();
    }

    private static ImmutableSortedDictionary<int, (string, string)> Load()
    {
        using Stream stream = typeof(CommonMarkReferences).Assembly.GetManifestResourceStream("commonmark.json")!;
        using var json = JsonDocument.Parse(stream);
        return json.RootElement.EnumerateArray().ToImmutableSortedDictionary(
            one => one.GetProperty("number").GetInt32(),
            one => (one.GetProperty("markdown").GetString()!, one.GetProperty("html").GetString()!));
    }
}
