using Rookery.Notation.Lines;

namespace Rookery.Notation.Expressions;

/// <summary>How messages spell a sign.</summary>
internal static class Spelling
{
    public static string Of(TokenKind kind) => kind switch
    {
        TokenKind.OpenParenthesis => "'('",
        TokenKind.CloseParenthesis => "')'",
        TokenKind.OpenBracket => "'['",
        TokenKind.CloseBracket => "']'",
        TokenKind.Comma => "','",
        TokenKind.Dot => "'.'",
        TokenKind.DotDot => "'..'",
        TokenKind.Colon => "':'",
        TokenKind.Assign => "'='",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a sign that messages speak of."),
    };
}
