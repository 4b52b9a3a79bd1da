using Rookery.Notation;

namespace Rookery.Checking.Syntax;

/// <summary>An order written at the end of a line.</summary>
internal sealed record OrderMark(AccessOrder Order, SourceSpan Span);
