using System.Globalization;
using Rookery.Notation.Lines;
using Superpower;
using Superpower.Model;

namespace Rookery.Notation.Expressions;

/// <summary>Parsers of single tokens, named the way their author would name what is missing.</summary>
public static class TokenParsers
{
    /// <summary>A sign such as a comma.</summary>
    public static TokenListParser<TokenKind, Token<TokenKind>> Sign(TokenKind kind) =>
        Match(token => token.Kind == kind, Spelling.Of(kind));

    /// <summary>A certain word, reserved or not.</summary>
    public static TokenListParser<TokenKind, Token<TokenKind>> Word(string word) => Match(
        token => token.Kind is TokenKind.Word or TokenKind.Name && token.ToStringValue() == word, $"'{word}'");

    /// <summary>A name that the author chose.</summary>
    /// <param name="what">What it names, such as "the name of a task".</param>
    public static TokenListParser<TokenKind, Token<TokenKind>> Name(string what) =>
        Match(token => token.Kind == TokenKind.Name, what);

    /// <summary>A text in double quotes.</summary>
    /// <param name="what">What it says, such as "a file in quotes".</param>
    public static TokenListParser<TokenKind, Token<TokenKind>> Text(string what) =>
        Match(token => token.Kind == TokenKind.Text, what);

    /// <summary>A number, with a minus sign or without.</summary>
    public static TokenListParser<TokenKind, NumberExpression> Integer { get; } = ReadInteger;

    /// <summary>Items separated by commas up to, and with, a closing sign; possibly none.</summary>
    /// <remarks>A loop: lists may be as long as a line.</remarks>
    public static TokenListParser<TokenKind, T[]> Separated<T>(TokenListParser<TokenKind, T> item, TokenKind close) =>
        input =>
        {
            var items = new List<T>();
            var first = input.ConsumeToken();
            if (first.HasValue && first.Value.Kind == close)
                return TokenListParserResult.Value<TokenKind, T[]>([], input, first.Remainder);
            var rest = input;
            while (true)
            {
                var one = item(rest);
                if (!one.HasValue)
                    return TokenListParserResult.CastEmpty<TokenKind, T, T[]>(one);
                items.Add(one.Value);
                var next = one.Remainder.ConsumeToken();
                if (next.HasValue && next.Value.Kind == close)
                    return TokenListParserResult.Value<TokenKind, T[]>([.. items], input, next.Remainder);
                if (!next.HasValue || next.Value.Kind != TokenKind.Comma)
                {
                    return TokenListParserResult.Empty<TokenKind, T[]>(
                        one.Remainder, [Spelling.Of(TokenKind.Comma), Spelling.Of(close)]);
                }

                rest = next.Remainder;
            }
        };

    private static TokenListParser<TokenKind, Token<TokenKind>> Match(Func<Token<TokenKind>, bool> fits, string what) =>
        input =>
        {
            var next = input.ConsumeToken();
            return next.HasValue && fits(next.Value)
                ? TokenListParserResult.Value(next.Value, input, next.Remainder)
                : TokenListParserResult.Empty<TokenKind, Token<TokenKind>>(input, [what]);
        };

    private static TokenListParserResult<TokenKind, NumberExpression> ReadInteger(TokenList<TokenKind> input)
    {
        var first = input.ConsumeToken();
        bool isNegative = first.HasValue && first.Value.Kind == TokenKind.Minus;
        var number = isNegative ? first.Remainder.ConsumeToken() : first;
        if (!number.HasValue || number.Value.Kind != TokenKind.Number)
        {
            return TokenListParserResult.Empty<TokenKind, NumberExpression>(
                isNegative ? first.Remainder : input, ["a number"]);
        }

        string digits = number.Value.ToStringValue().Replace("_", "", StringComparison.Ordinal);
        string signed = isNegative ? "-" + digits : digits;
        bool fits = long.TryParse(
            signed, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out long value);
        return fits
            ? TokenListParserResult.Value(
                new NumberExpression(first.Value.ToSourceSpan(), value), input, number.Remainder)
            : TokenListParserResult.Empty<TokenKind, NumberExpression>(input, ExpressionErrors.TooLarge);
    }
}
