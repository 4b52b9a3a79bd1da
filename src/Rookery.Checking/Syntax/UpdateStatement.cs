using Rookery.Notation;
using Rookery.Notation.Expressions;

namespace Rookery.Checking.Syntax;

/// <summary><c>cas(...)</c>, <c>add(...)</c> or <c>swap(...)</c> whose answer nobody wants.</summary>
internal sealed record UpdateStatement(SourceSpan Span, Expression Call, OrderMark? Order) : Statement(Span);
