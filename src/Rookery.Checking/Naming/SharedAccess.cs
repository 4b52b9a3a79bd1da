using Rookery.Notation;
using Rookery.Notation.Expressions;

namespace Rookery.Checking.Naming;

/// <summary>A shared access as it stands in an expression.</summary>
/// <param name="Node">The part of the expression that it is.</param>
/// <param name="Kind">What it does.</param>
/// <param name="Name">The shared name.</param>
/// <param name="Index">Which element; null for a single place.</param>
/// <param name="IsConditional">Whether evaluation may pass over it.</param>
internal sealed record SharedAccess(
    Expression Node, AccessKind Kind, string Name, Expression? Index, bool IsConditional)
{
    /// <summary>Where it stands.</summary>
    public SourceSpan Span => Node.Span;
}
