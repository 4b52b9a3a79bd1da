namespace Rookery.Notation.Expressions;

/// <summary>An operator between two operands.</summary>
public sealed class BinaryExpression(SourceSpan span, BinaryOperator op, Expression left, Expression right)
    : Expression(span)
{
    /// <summary>The operator.</summary>
    public BinaryOperator Operator { get; } = op;

    /// <summary>Left operand; see <see cref="Expression"/> on its depth.</summary>
    public Expression Left { get; } = left;

    /// <summary>Right operand.</summary>
    public Expression Right { get; } = right;

    /// <summary>
    /// The operators of a left-leaning chain, innermost first, so that no walk needs to recurse into it.
    /// </summary>
    /// <param name="first">The operand at the far left, which is no binary expression.</param>
    public Stack<BinaryExpression> Unchain(out Expression first)
    {
        var chain = new Stack<BinaryExpression>();
        Expression at = this;
        while (at is BinaryExpression binary)
        {
            chain.Push(binary);
            at = binary.Left;
        }

        first = at;
        return chain;
    }
}
