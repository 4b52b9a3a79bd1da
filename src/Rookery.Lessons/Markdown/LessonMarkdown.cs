using Markdig;
using Markdig.Extensions.AutoIdentifiers;
using Markdig.Parsers.Inlines;
using Markdig.Syntax;
using Rookery.Notation;

namespace Rookery.Lessons.Markdown;

/// <summary>The Markdown of lessons: CommonMark 0.31, with tables, definitions, footnotes and names for
/// headings.</summary>
internal static class LessonMarkdown
{
    /// <summary>How texts are read.</summary>
    public static MarkdownPipeline Pipeline { get; } = Build();

    /// <summary>Reads a text.</summary>
    /// <returns>The document; null when it nests too deep, and then an error has been added.</returns>
    public static MarkdownDocument? Read(string text, DiagnosticList errors)
    {
        try
        {
            return Markdig.Markdown.Parse(text, Pipeline);
        }
        catch (ArgumentException)
        {
            // The library's own guard against quotes in quotes in quotes.
            errors.Add(LessonErrors.TooDeep());
            return null;
        }
    }

    private static MarkdownPipeline Build()
    {
        MarkdownPipelineBuilder builder = new MarkdownPipelineBuilder()
            .UsePreciseSourceLocation()
            .UsePipeTables()
            .UseFootnotes()
            .UseDefinitionLists()
            .UseAutoIdentifiers(AutoIdentifierOptions.GitHub);
        builder.InlineParsers.InsertBefore<EmphasisInlineParser>(new MeasureParser());
        return builder.Build();
    }
}
