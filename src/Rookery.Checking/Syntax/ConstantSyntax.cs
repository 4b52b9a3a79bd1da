using Rookery.Notation.Expressions;

namespace Rookery.Checking.Syntax;

/// <summary><c>const NAME = E</c>.</summary>
internal sealed record ConstantSyntax(NameSyntax Name, Expression Value);
