using System.Collections.Immutable;
using Rookery.Notation.Expressions;

namespace Rookery.Checking.Syntax;

/// <summary>An operation with its arguments, as a thread of a scenario runs it.</summary>
internal sealed record InvocationSyntax(NameSyntax Operation, ImmutableArray<Expression> Arguments);
