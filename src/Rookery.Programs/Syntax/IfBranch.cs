using System.Collections.Immutable;
using Rookery.Notation.Expressions;

namespace Rookery.Programs.Syntax;

/// <summary>One branch of an <see cref="IfStatement"/>.</summary>
/// <param name="Condition">True is anything but 0.</param>
/// <param name="Body">What happens then.</param>
public sealed record IfBranch(Expression Condition, ImmutableArray<Statement> Body);
