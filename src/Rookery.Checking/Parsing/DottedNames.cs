using Rookery.Notation.Lines;
using Superpower.Model;

namespace Rookery.Checking.Parsing;

/// <summary>Makes one name of <c>left.a</c>, so that conditions over results are ordinary expressions.</summary>
internal static class DottedNames
{
    /// <summary>The line with such names put together.</summary>
    public static SourceLine Join(SourceLine line)
    {
        Token<TokenKind>[] tokens = [.. line.Tokens];
        var joined = new List<Token<TokenKind>>(tokens.Length);
        for (int at = 0; at < tokens.Length; at++)
        {
            if (at + 2 < tokens.Length && IsDotted(tokens, at))
            {
                var last = tokens[at + 2];
                int length = last.Position.Absolute + last.Span.Length - tokens[at].Position.Absolute;
                var span = new TextSpan(tokens[at].Span.Source!, tokens[at].Position, length);
                joined.Add(new(TokenKind.Name, span));
                at += 2;
            }
            else
            {
                joined.Add(tokens[at]);
            }
        }

        return line with { Tokens = new([.. joined]) };
    }

    private static bool IsDotted(Token<TokenKind>[] tokens, int at)
    {
        var (first, dot, last) = (tokens[at], tokens[at + 1], tokens[at + 2]);
        return first.Kind == TokenKind.Name && dot.Kind == TokenKind.Dot && last.Kind == TokenKind.Name
            && first.Position.Absolute + first.Span.Length == dot.Position.Absolute
            && dot.Position.Absolute + 1 == last.Position.Absolute;
    }
}
