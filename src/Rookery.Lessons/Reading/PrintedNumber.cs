using Rookery.Lessons.Formulas;
using Rookery.Lessons.Markdown;
using Rookery.Notation;

namespace Rookery.Lessons.Reading;

/// <summary>A number that a lesson's text prints.</summary>
/// <param name="Inline">Where in the document.</param>
/// <param name="Text">Its formula as written.</param>
/// <param name="Span">Where in the text.</param>
/// <param name="Formula">Its formula.</param>
/// <param name="Format">How it looks.</param>
/// <param name="Above">The nearest block above it, from 0; -1 for none.</param>
internal sealed record PrintedNumber(
    MeasureInline Inline, string Text, SourceSpan Span, Formula Formula, NumberFormat Format, int Above);
