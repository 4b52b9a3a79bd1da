using System.Collections.Immutable;
using Rookery.Notation;

namespace Rookery.Checking.Syntax;

/// <summary><c>while C</c> and the block that is repeated.</summary>
internal sealed record WhileStatement(SourceSpan Span, ConditionSyntax Condition, ImmutableArray<Statement> Body)
    : Statement(Span);
