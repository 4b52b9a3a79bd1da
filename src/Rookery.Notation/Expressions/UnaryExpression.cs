namespace Rookery.Notation.Expressions;

/// <summary>A prefix operator and its operand.</summary>
public sealed class UnaryExpression(SourceSpan span, UnaryOperator op, Expression operand) : Expression(span)
{
    /// <summary>The operator.</summary>
    public UnaryOperator Operator { get; } = op;

    /// <summary>What it applies to.</summary>
    public Expression Operand { get; } = operand;
}
