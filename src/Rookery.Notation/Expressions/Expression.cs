namespace Rookery.Notation.Expressions;

/// <summary>An expression as written: a tree without meaning.</summary>
/// <remarks>
/// Compared by reference. Chains such as <c>1 + 1 + 1</c> lean to the left and may be thousands of operators deep on
/// that side; everywhere else the depth is bounded by <see cref="Lines.NotationLimits.NestingMax"/>. So whoever walks
/// a tree must follow <see cref="BinaryExpression.Left"/> with a loop.
/// </remarks>
public abstract class Expression
{
    private protected Expression(SourceSpan span) => Span = span;

    /// <summary>The token that errors point at: the operator, the name, the number.</summary>
    public SourceSpan Span { get; }
}
