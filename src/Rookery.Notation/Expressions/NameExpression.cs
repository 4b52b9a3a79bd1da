namespace Rookery.Notation.Expressions;

/// <summary>A name that stands for a value.</summary>
public sealed class NameExpression(SourceSpan span, string name) : Expression(span)
{
    /// <summary>The name.</summary>
    public string Name { get; } = name;
}
