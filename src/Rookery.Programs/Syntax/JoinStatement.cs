using Rookery.Notation;

namespace Rookery.Programs.Syntax;

/// <summary><c>join</c>: wait for all children that this task has forked so far.</summary>
/// <param name="Span">Where the word stands.</param>
public sealed record JoinStatement(SourceSpan Span) : Statement(Span);
