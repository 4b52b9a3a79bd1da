namespace Rookery.Notation.Expressions;

/// <summary>Prefix operators.</summary>
public enum UnaryOperator
{
    /// <summary><c>-x</c></summary>
    Negate,

    /// <summary><c>not x</c>: 1 when x is 0, otherwise 0.</summary>
    Not,
}
