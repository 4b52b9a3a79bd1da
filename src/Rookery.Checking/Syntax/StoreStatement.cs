using Rookery.Notation;
using Rookery.Notation.Expressions;

namespace Rookery.Checking.Syntax;

/// <summary><c>NAME = E</c> or <c>NAME[I] = E</c>: writes a shared place.</summary>
internal sealed record StoreStatement(
    SourceSpan Span, NameSyntax Name, Expression? Index, Expression Value, OrderMark? Order) : Statement(Span);
