using Rookery.Notation;
using Rookery.Notation.Expressions;

namespace Rookery.Programs.Syntax;

/// <summary><c>const NAME = EXPR</c>: a value computed once, from what is declared above it.</summary>
/// <param name="Name">The name.</param>
/// <param name="Span">Where the name stands.</param>
/// <param name="Value">What computes it.</param>
public sealed record ConstantDeclaration(string Name, SourceSpan Span, Expression Value) : Declaration(Name, Span);
