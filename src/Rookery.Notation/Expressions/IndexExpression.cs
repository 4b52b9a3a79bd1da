namespace Rookery.Notation.Expressions;

/// <summary>One element of something: <c>tiles[i]</c>.</summary>
public sealed class IndexExpression(SourceSpan span, string name, Expression index) : Expression(span)
{
    /// <summary>What is indexed.</summary>
    public string Name { get; } = name;

    /// <summary>Which element.</summary>
    public Expression Index { get; } = index;
}
