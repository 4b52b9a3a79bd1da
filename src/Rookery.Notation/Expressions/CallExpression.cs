using System.Collections.Immutable;

namespace Rookery.Notation.Expressions;

/// <summary>A function applied to arguments: <c>min(a, b)</c>.</summary>
public sealed class CallExpression(SourceSpan span, string name, ImmutableArray<Expression> arguments)
    : Expression(span)
{
    /// <summary>Name of the function.</summary>
    public string Name { get; } = name;

    /// <summary>Its arguments in order.</summary>
    public ImmutableArray<Expression> Arguments { get; } = arguments;
}
