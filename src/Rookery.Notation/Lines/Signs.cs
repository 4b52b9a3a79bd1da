namespace Rookery.Notation.Lines;

/// <summary>The signs of the notations, and what to say about signs that other languages have.</summary>
internal static class Signs
{
    /// <summary>The longest sign that these two characters begin.</summary>
    /// <returns><see cref="TokenKind.None"/> and how many characters to skip when there is none.</returns>
    public static (TokenKind Kind, int Length) Match(char first, char second) => (first, second) switch
    {
        ('.', '.') => (TokenKind.DotDot, 2),
        ('=', '=') => (TokenKind.Equal, 2),
        ('!', '=') => (TokenKind.NotEqual, 2),
        ('<', '=') => (TokenKind.LessEqual, 2),
        ('>', '=') => (TokenKind.GreaterEqual, 2),
        ('<', '<') => (TokenKind.ShiftLeft, 2),
        ('>', '>') => (TokenKind.ShiftRight, 2),
        ('&', '&') or ('|', '|') or ('/', '/') => (TokenKind.None, 2),
        _ => (Single(first), 1),
    };

    /// <summary>What to write instead of a sign that is not ours, or empty.</summary>
    public static string HintFor(char first, char second) => (first, second) switch
    {
        ('&', '&') => "write and",
        ('|', '|') => "write or",
        ('/', '/') => "a comment begins with #; one / divides and rounds down",
        ('!', _) => "write not, or != to compare",
        (';', _) => "one statement a line, nothing at its end",
        ('{', _) or ('}', _) => "a block is made by indentation",
        ('\'', _) or ('\u201C', _) or ('\u201D', _) => "a text stands between straight double quotes: \"",
        ('\u2264', _) => "write <=",
        ('\u2265', _) => "write >=",
        ('\u2260', _) => "write !=",
        ('\u2212', _) or ('\u2013', _) => "write the plain minus: -",
        ('\u00A0', _) => "this is a no-break space: replace it by a blank",
        _ => "",
    };

    private static TokenKind Single(char c) => c switch
    {
        '(' => TokenKind.OpenParenthesis,
        ')' => TokenKind.CloseParenthesis,
        '[' => TokenKind.OpenBracket,
        ']' => TokenKind.CloseBracket,
        ',' => TokenKind.Comma,
        '.' => TokenKind.Dot,
        ':' => TokenKind.Colon,
        '=' => TokenKind.Assign,
        '<' => TokenKind.Less,
        '>' => TokenKind.Greater,
        '+' => TokenKind.Plus,
        '-' => TokenKind.Minus,
        '*' => TokenKind.Star,
        '/' => TokenKind.Slash,
        '%' => TokenKind.Percent,
        '&' => TokenKind.Ampersand,
        '|' => TokenKind.Bar,
        '^' => TokenKind.Caret,
        _ => TokenKind.None,
    };
}
