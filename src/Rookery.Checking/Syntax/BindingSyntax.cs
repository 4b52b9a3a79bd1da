using Rookery.Notation.Expressions;

namespace Rookery.Checking.Syntax;

/// <summary>A parameter and its value in one scenario.</summary>
internal sealed record BindingSyntax(NameSyntax Name, NumberExpression Value);
