using Rookery.Notation;
using Rookery.Notation.Expressions;

namespace Rookery.Programs.Syntax;

/// <summary><c>let NAME = E</c>: gives a name to a value, or a new value to a name of the same task.</summary>
/// <param name="Span">Where its first word stands.</param>
/// <param name="Name">The name.</param>
/// <param name="Value">The value.</param>
public sealed record LetStatement(SourceSpan Span, NameSyntax Name, Expression Value) : Statement(Span);
