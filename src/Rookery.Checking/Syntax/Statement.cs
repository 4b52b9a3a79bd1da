using Rookery.Notation;

namespace Rookery.Checking.Syntax;

/// <summary>One line of an operation, with what is indented under it.</summary>
/// <param name="Span">Where its first word stands.</param>
internal abstract record Statement(SourceSpan Span);
