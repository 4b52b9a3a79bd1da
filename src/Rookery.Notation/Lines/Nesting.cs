using Superpower.Model;

namespace Rookery.Notation.Lines;

/// <summary>Measures how deep a line nests without recursion, so that the parsers after it may recurse.</summary>
internal static class Nesting
{
    /// <summary>The first token that lies deeper than <see cref="NotationLimits.NestingMax"/>, or null.</summary>
    /// <remarks>
    /// Levels are opened by brackets, by each sign of a run of prefix operators, and by each <c>if</c>; a bracket
    /// closes what was opened inside it, a value ends a run of prefix operators.
    /// </remarks>
    public static Token<TokenKind>? FirstTooDeep(List<Token<TokenKind>> tokens)
    {
        var outer = new Stack<int>();
        int depth = 0, prefixRun = 0;
        foreach (var token in tokens)
        {
            switch (token.Kind)
            {
                case TokenKind.OpenParenthesis or TokenKind.OpenBracket:
                    outer.Push(depth);
                    depth += prefixRun + 1;
                    prefixRun = 0;
                    break;
                case TokenKind.CloseParenthesis or TokenKind.CloseBracket:
                    depth = outer.Count > 0 ? outer.Pop() : depth;
                    prefixRun = 0;
                    break;
                case TokenKind.Word when token.ToStringValue() == "if":
                    depth += prefixRun + 1;
                    prefixRun = 0;
                    break;
                case TokenKind.Minus:
                case TokenKind.Word when token.ToStringValue() == "not":
                    prefixRun++;
                    break;
                default:
                    prefixRun = 0;
                    break;
            }

            if (depth + prefixRun > NotationLimits.NestingMax)
                return token;
        }

        return null;
    }
}
