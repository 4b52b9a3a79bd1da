using System.Collections.Immutable;
using System.Globalization;
using Markdig.Renderers;
using Markdig.Renderers.Html;
using Markdig.Syntax;
using Rookery.Lessons.Blocks;

namespace Rookery.Lessons.Markdown;

/// <summary>From a document to HTML that still has to be cleaned, with a mark where each block belongs.</summary>
/// <param name="blocks">The live blocks.</param>
/// <param name="numbers">What each printed number says.</param>
/// <param name="mark">Begins each mark: a word that the lesson cannot contain.</param>
internal sealed class BodyRenderer(
    ImmutableDictionary<FencedCodeBlock, LessonBlock> blocks, IReadOnlyDictionary<MeasureInline, string> numbers,
    string mark)
{
    /// <summary>The mark of a block.</summary>
    public static string MarkOf(string mark, int number) =>
        string.Create(CultureInfo.InvariantCulture, $"<p>{mark}-{number}</p>");

    /// <summary>The HTML.</summary>
    public string Render(MarkdownDocument document)
    {
        using var writer = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
        var renderer = new HtmlRenderer(writer);
        LessonMarkdown.Pipeline.Setup(renderer);
        renderer.ObjectRenderers.Replace<CodeBlockRenderer>(new FenceRenderer(blocks, mark));
        renderer.ObjectRenderers.Add(new NumberRenderer(numbers));
        renderer.Render(document);
        return writer.ToString();
    }

    private sealed class FenceRenderer(ImmutableDictionary<FencedCodeBlock, LessonBlock> blocks, string mark)
        : CodeBlockRenderer
    {
        protected override void Write(HtmlRenderer renderer, CodeBlock obj)
        {
            if (obj is FencedCodeBlock fence && blocks.TryGetValue(fence, out LessonBlock? block))
                renderer.EnsureLine().Write(MarkOf(mark, block.Place.Number)).WriteLine();
            else
                base.Write(renderer, obj);
        }
    }

    private sealed class NumberRenderer(IReadOnlyDictionary<MeasureInline, string> numbers)
        : HtmlObjectRenderer<MeasureInline>
    {
        protected override void Write(HtmlRenderer renderer, MeasureInline obj)
        {
            renderer.Write(renderer.EnableHtmlForInline ? "<span class=\"number\">" : "");
            renderer.WriteEscape(numbers.GetValueOrDefault(obj, ""));
            renderer.Write(renderer.EnableHtmlForInline ? "</span>" : "");
        }
    }
}
