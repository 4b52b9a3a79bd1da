namespace Rookery.Notation.Expressions;

/// <summary>A number as written, with its sign when one stands directly before it.</summary>
public sealed class NumberExpression(SourceSpan span, long value) : Expression(span)
{
    /// <summary>Its value.</summary>
    public long Value { get; } = value;
}
