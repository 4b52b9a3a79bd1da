namespace Rookery.Notation.Lines;

/// <summary>How large a text may be; what strangers send must not exhaust a stack or the memory.</summary>
/// <remarks>These are fixed: a text that a person wrote stays far below each.</remarks>
public static class NotationLimits
{
    /// <summary>Characters in a text: 1 MiB.</summary>
    public const int CharactersMax = 1 << 20;

    /// <summary>Lines in a text; line numbers fit in 16 bits.</summary>
    public const int LinesMax = 65_535;

    /// <summary>Tokens on one line.</summary>
    public const int TokensMax = 10_000;

    /// <summary>
    /// Levels of parentheses, brackets, prefix operators and conditions inside one another on one line.
    /// </summary>
    public const int NestingMax = 200;

    /// <summary>Levels of indented blocks inside one another.</summary>
    public const int BlocksMax = 100;
}
