namespace Rookery.Notation.Expressions;

/// <summary>A choice between two values: <c>if c then a else b</c>.</summary>
public sealed class ConditionalExpression(
    SourceSpan span, Expression condition, Expression whenTrue, Expression whenFalse) : Expression(span)
{
    /// <summary>What decides: anything but 0 is true.</summary>
    public Expression Condition { get; } = condition;

    /// <summary>The value when the condition is true; otherwise not evaluated.</summary>
    public Expression WhenTrue { get; } = whenTrue;

    /// <summary>The value when the condition is false; otherwise not evaluated.</summary>
    public Expression WhenFalse { get; } = whenFalse;
}
