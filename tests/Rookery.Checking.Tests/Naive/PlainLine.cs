using System.Collections.Immutable;
using Rookery.Checking.Syntax;
using Rookery.Notation.Expressions;

namespace Rookery.Checking.Tests.Naive;

/// <summary>What a line of <see cref="PlainCode"/> does.</summary>
internal enum PlainKind
{
    Let,
    Store,
    Update,
    Fence,
    Lock,
    Unlock,
    Branch,
    Goto,
    Return,
    End,
}

/// <summary>One line of an operation, with jumps in place of blocks.</summary>
internal sealed record PlainLine(
    PlainKind Kind, string Name, Expression? Index, ImmutableArray<Expression> Values, AccessOrder Order, int Target,
    int Invocation);
