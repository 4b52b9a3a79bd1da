using System.Collections.Immutable;
using Rookery.Notation;
using Rookery.Notation.Expressions;

namespace Rookery.Programs.Syntax;

/// <summary><c>start NAME(ARGS)</c>: the task that a run begins with.</summary>
/// <param name="Span">Where the word stands.</param>
/// <param name="Callee">The task's name.</param>
/// <param name="Arguments">Its arguments.</param>
public sealed record StartSyntax(SourceSpan Span, NameSyntax Callee, ImmutableArray<Expression> Arguments);
