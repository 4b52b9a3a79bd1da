using System.Collections.Immutable;
using Markdig.Syntax;
using Rookery.Lessons.Blocks;
using Rookery.Lessons.Reading;
using Rookery.Notation;

namespace Rookery.Lessons;

/// <summary>A lesson that was read and checked; its blocks still have to be computed.</summary>
/// <remarks>Made by <see cref="LessonReader"/> only. Not changed after that.</remarks>
public sealed class Lesson
{
    internal Lesson(
        SourceText source, FrontMatter front, MarkdownDocument document, ImmutableArray<LessonBlock> blocks,
        ImmutableDictionary<FencedCodeBlock, LessonBlock> blocksByFence, ImmutableArray<PrintedNumber> numbers,
        ImmutableSortedSet<string> images)
    {
        (Source, Front, Document, Blocks, BlocksByFence, Numbers, Images) =
            (source, front, document, blocks, blocksByFence, numbers, images);
    }

    /// <summary>Its text.</summary>
    public SourceText Source { get; }

    /// <summary>What it says of itself.</summary>
    public FrontMatter Front { get; }

    /// <summary>Its live parts, in the order of the text.</summary>
    public ImmutableArray<LessonBlock> Blocks { get; }

    /// <summary>The pictures that it shows, by file name.</summary>
    public ImmutableSortedSet<string> Images { get; }

    internal MarkdownDocument Document { get; }

    internal ImmutableDictionary<FencedCodeBlock, LessonBlock> BlocksByFence { get; }

    internal ImmutableArray<PrintedNumber> Numbers { get; }
}
