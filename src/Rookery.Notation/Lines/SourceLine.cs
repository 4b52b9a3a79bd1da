using Superpower.Model;

namespace Rookery.Notation.Lines;

/// <summary>One line that holds something: its indentation and its tokens.</summary>
/// <param name="Number">Line, from 1.</param>
/// <param name="Indent">Blanks before the first token; a guess when broken by tabs.</param>
/// <param name="EndColumn">Column after the last token, from 1.</param>
/// <param name="Tokens">The tokens, comment left out; at least one unless broken.</param>
/// <param name="IsBroken">Whether an error was reported for it already, so that only its indentation counts.</param>
public sealed record SourceLine(int Number, int Indent, int EndColumn, TokenList<TokenKind> Tokens, bool IsBroken)
{
    /// <summary>The first token.</summary>
    public Token<TokenKind> First => Tokens.ConsumeToken().Value;

    /// <summary>The place just after the last token.</summary>
    public SourceSpan End => new(Number, EndColumn, 1);

    /// <summary>The place of the first token, or of the first character when broken.</summary>
    public SourceSpan Start => IsBroken ? new(Number, Indent + 1, 1) : First.ToSourceSpan();
}
