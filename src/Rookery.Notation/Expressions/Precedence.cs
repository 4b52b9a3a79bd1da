using Rookery.Notation.Lines;

namespace Rookery.Notation.Expressions;

/// <summary>How strongly operators bind, from 1 (loosest): <c>or</c>, <c>and</c>, <c>not</c>, comparisons, <c>|</c>,
/// <c>^</c>, <c>&amp;</c>, shifts, sums, products, minus sign.</summary>
internal static class Precedence
{
    public const int Not = 3;
    public const int Comparison = 4;
    public const int Negate = 11;

    /// <summary>The operator that a token stands for, and its precedence; 0 for a token that is none.</summary>
    public static (BinaryOperator Operator, int Level) Of(TokenKind kind, string text) => kind switch
    {
        TokenKind.Word when text == "or" => (BinaryOperator.Or, 1),
        TokenKind.Word when text == "and" => (BinaryOperator.And, 2),
        TokenKind.Equal or TokenKind.Assign => (BinaryOperator.Equal, Comparison),
        TokenKind.NotEqual => (BinaryOperator.NotEqual, Comparison),
        TokenKind.Less => (BinaryOperator.Less, Comparison),
        TokenKind.LessEqual => (BinaryOperator.LessEqual, Comparison),
        TokenKind.Greater => (BinaryOperator.Greater, Comparison),
        TokenKind.GreaterEqual => (BinaryOperator.GreaterEqual, Comparison),
        TokenKind.Bar => (BinaryOperator.BitOr, 5),
        TokenKind.Caret => (BinaryOperator.BitXor, 6),
        TokenKind.Ampersand => (BinaryOperator.BitAnd, 7),
        TokenKind.ShiftLeft => (BinaryOperator.ShiftLeft, 8),
        TokenKind.ShiftRight => (BinaryOperator.ShiftRight, 8),
        TokenKind.Plus => (BinaryOperator.Add, 9),
        TokenKind.Minus => (BinaryOperator.Subtract, 9),
        TokenKind.Star => (BinaryOperator.Multiply, 10),
        TokenKind.Slash => (BinaryOperator.Divide, 10),
        TokenKind.Percent => (BinaryOperator.Remainder, 10),
        _ => (default, 0),
    };
}
