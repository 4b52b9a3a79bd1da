using Rookery.Notation;

namespace Rookery.Checking.Syntax;

/// <summary><c>assert C</c>: what must be true whenever this line is reached.</summary>
internal sealed record AssertStatement(SourceSpan Span, ConditionSyntax Condition) : Statement(Span);
