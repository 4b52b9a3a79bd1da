using Rookery.Notation;

namespace Rookery.Programs.Syntax;

/// <summary>One statement of a task.</summary>
/// <param name="Span">Where its first word stands.</param>
public abstract record Statement(SourceSpan Span);
