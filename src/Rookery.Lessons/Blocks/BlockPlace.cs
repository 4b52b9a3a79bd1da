using Rookery.Notation;

namespace Rookery.Lessons.Blocks;

/// <summary>Where a block stands.</summary>
/// <param name="Lesson">The lesson's text.</param>
/// <param name="Span">Its first line.</param>
/// <param name="Number">Which block of its lesson, from 1.</param>
public sealed record BlockPlace(SourceText Lesson, SourceSpan Span, int Number);
