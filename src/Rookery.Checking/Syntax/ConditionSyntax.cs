using Rookery.Notation;
using Rookery.Notation.Expressions;

namespace Rookery.Checking.Syntax;

/// <summary>A condition and the order of the access in it.</summary>
internal sealed record ConditionSyntax(SourceSpan Span, Expression Value, OrderMark? Order);
