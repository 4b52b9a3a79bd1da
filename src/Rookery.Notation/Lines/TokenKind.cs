namespace Rookery.Notation.Lines;

/// <summary>What a token is.</summary>
public enum TokenKind
{
    /// <summary>Not a token: the default value.</summary>
    None,

    /// <summary>A name or a word that is not reserved.</summary>
    Name,

    /// <summary>A reserved word.</summary>
    Word,

    /// <summary>A decimal number, <c>_</c> between digits allowed.</summary>
    Number,

    /// <summary>A text in double quotes.</summary>
    Text,

    /// <summary><c>(</c></summary>
    OpenParenthesis,

    /// <summary><c>)</c></summary>
    CloseParenthesis,

    /// <summary><c>[</c></summary>
    OpenBracket,

    /// <summary><c>]</c></summary>
    CloseBracket,

    /// <summary><c>,</c></summary>
    Comma,

    /// <summary><c>.</c></summary>
    Dot,

    /// <summary><c>..</c></summary>
    DotDot,

    /// <summary><c>:</c></summary>
    Colon,

    /// <summary><c>=</c></summary>
    Assign,

    /// <summary><c>==</c></summary>
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

    /// <summary><c>+</c></summary>
    Plus,

    /// <summary><c>-</c></summary>
    Minus,

    /// <summary><c>*</c></summary>
    Star,

    /// <summary><c>/</c></summary>
    Slash,

    /// <summary><c>%</c></summary>
    Percent,

    /// <summary><c>&amp;</c></summary>
    Ampersand,

    /// <summary><c>|</c></summary>
    Bar,

    /// <summary><c>^</c></summary>
    Caret,

    /// <summary><c>&lt;&lt;</c></summary>
    ShiftLeft,

    /// <summary><c>&gt;&gt;</c></summary>
    ShiftRight,
}
