using Rookery.Notation;
using Rookery.Notation.Expressions;

namespace Rookery.Checking.Syntax;

/// <summary><c>let NAME = E</c>: a name of this thread's own for a value.</summary>
internal sealed record LetStatement(SourceSpan Span, NameSyntax Name, Expression Value, OrderMark? Order)
    : Statement(Span);
