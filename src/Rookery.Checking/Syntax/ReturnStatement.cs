using System.Collections.Immutable;
using Rookery.Notation;
using Rookery.Notation.Expressions;

namespace Rookery.Checking.Syntax;

/// <summary><c>return A, B</c>: ends the operation with these results.</summary>
internal sealed record ReturnStatement(SourceSpan Span, ImmutableArray<Expression> Values, OrderMark? Order)
    : Statement(Span);
