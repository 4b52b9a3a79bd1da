namespace Rookery.Notation.Expressions;

/// <summary>Operators between two operands.</summary>
public enum BinaryOperator
{
    /// <summary><c>or</c>: the right side is evaluated only when the left is 0.</summary>
    Or,

    /// <summary><c>and</c>: the right side is evaluated only when the left is not 0.</summary>
    And,

    /// <summary><c>==</c>, also written <c>=</c>.</summary>
    Equal,

    /// <summary><c>!=</c></summary>
    NotEqual,

    /// <summary><c>&lt;</c></summary>
    Less,

    /// <summary><c>&lt;=</c></summary>
    LessEqual,

    /// <summary><c>&gt;</c></summary>
    Greater,

    /// <summary><c>&gt;=</c></summary>
    GreaterEqual,

    /// <summary><c>|</c></summary>
    BitOr,

    /// <summary><c>^</c></summary>
    BitXor,

    /// <summary><c>&amp;</c></summary>
    BitAnd,

    /// <summary><c>&lt;&lt;</c></summary>
    ShiftLeft,

    /// <summary><c>&gt;&gt;</c></summary>
    ShiftRight,

    /// <summary><c>+</c></summary>
    Add,

    /// <summary><c>-</c></summary>
    Subtract,

    /// <summary><c>*</c></summary>
    Multiply,

    /// <summary><c>/</c>, rounds down.</summary>
    Divide,

    /// <summary><c>%</c>, has the sign of the right side.</summary>
    Remainder,
}
