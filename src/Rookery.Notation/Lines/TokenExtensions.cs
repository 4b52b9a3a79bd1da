using Superpower.Model;

namespace Rookery.Notation.Lines;

/// <summary>Tokens in our terms.</summary>
public static class TokenExtensions
{
    /// <summary>Where a token stands.</summary>
    public static SourceSpan ToSourceSpan(this Token<TokenKind> token) =>
        new(token.Position.Line, token.Position.Column, token.Span.Length);
}
