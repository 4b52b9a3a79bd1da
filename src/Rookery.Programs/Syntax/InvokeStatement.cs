using System.Collections.Immutable;
using Rookery.Notation;
using Rookery.Notation.Expressions;

namespace Rookery.Programs.Syntax;

/// <summary><c>fork T(ARGS)</c> or <c>call T(ARGS)</c>.</summary>
/// <param name="Span">Where its first word stands.</param>
/// <param name="IsFork">Whether the child may run in parallel.</param>
/// <param name="Callee">The task's name.</param>
/// <param name="Arguments">Its arguments.</param>
public sealed record InvokeStatement(
    SourceSpan Span, bool IsFork, NameSyntax Callee, ImmutableArray<Expression> Arguments) : Statement(Span);
