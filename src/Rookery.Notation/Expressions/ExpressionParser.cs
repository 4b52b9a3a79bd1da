using Rookery.Notation.Lines;
using Superpower;
using Superpower.Model;
using static Rookery.Notation.Expressions.TokenParsers;

namespace Rookery.Notation.Expressions;

/// <summary>The expressions that the notations share.</summary>
/// <remarks>
/// Values are read by token parsers; operators between them by precedence with an explicit stack (Dijkstra 1961, the
/// "shunting yard"), so a chain of any length needs no recursion. Example: <c>1 + 2 * 3 &lt; 8 and not x</c> reads as
/// <c>((1 + (2 * 3)) &lt; 8) and (not x)</c>.
/// </remarks>
public static class ExpressionParser
{
    /// <summary>One expression, as far as it reaches.</summary>
    public static TokenListParser<TokenKind, Expression> Expression { get; } = ReadExpression;

    /// <summary>Expressions in parentheses, separated by commas; possibly none.</summary>
    public static TokenListParser<TokenKind, Expression[]> Arguments { get; } =
        from open in Sign(TokenKind.OpenParenthesis)
        from arguments in Separated(ReadExpression, TokenKind.CloseParenthesis)
        select arguments;

    private static TokenListParserResult<TokenKind, Expression> ReadExpression(TokenList<TokenKind> input)
    {
        var stack = new OperatorStack();
        var rest = input;
        while (true)
        {
            rest = SkipPrefixes(rest, stack);
            var value = ReadValue(rest);
            if (!value.HasValue)
                return value;
            stack.PushValue(value.Value);
            rest = value.Remainder;
            var next = rest.ConsumeToken();
            var (op, level) = next.HasValue ? Precedence.Of(next.Value.Kind, next.Value.ToStringValue()) : default;
            if (level == 0)
                return TokenListParserResult.Value(stack.Finish(), input, rest);
            if (!stack.TryPushBinary(op, level, next.Value.ToSourceSpan()))
                return TokenListParserResult.Empty<TokenKind, Expression>(rest, ExpressionErrors.Chained);
            rest = next.Remainder;
        }
    }

    private static TokenList<TokenKind> SkipPrefixes(TokenList<TokenKind> rest, OperatorStack stack)
    {
        while (true)
        {
            var next = rest.ConsumeToken();
            if (!next.HasValue)
                return rest;
            var span = next.Value.ToSourceSpan();
            if (next.Value.Kind == TokenKind.Minus)
            {
                // The minus of a number belongs to it: otherwise the smallest number could not be written.
                var number = next.Remainder.ConsumeToken();
                if (number.HasValue && number.Value.Kind == TokenKind.Number)
                    return rest;
                stack.PushPrefix(UnaryOperator.Negate, Precedence.Negate, span);
            }
            else if (next.Value.Kind == TokenKind.Word && next.Value.ToStringValue() == "not")
            {
                stack.PushPrefix(UnaryOperator.Not, Precedence.Not, span);
            }
            else
            {
                return rest;
            }

            rest = next.Remainder;
        }
    }

    private static TokenListParserResult<TokenKind, Expression> ReadValue(TokenList<TokenKind> input)
    {
        var first = input.ConsumeToken();
        if (!first.HasValue)
            return TokenListParserResult.Empty<TokenKind, Expression>(input, ["a value"]);
        return first.Value.Kind switch
        {
            TokenKind.Number or TokenKind.Minus => ReadNumber(input),
            TokenKind.Name => ReadNamed(input, first.Value, first.Remainder),
            TokenKind.OpenParenthesis => Closed(ReadExpression(first.Remainder), TokenKind.CloseParenthesis),
            TokenKind.Word when first.Value.ToStringValue() == "if" => ReadConditional(first.Value, first.Remainder),
            _ => TokenListParserResult.Empty<TokenKind, Expression>(input, ["a value"]),
        };
    }

    private static TokenListParserResult<TokenKind, Expression> ReadNumber(TokenList<TokenKind> input)
    {
        var number = Integer(input);
        return number.HasValue
            ? TokenListParserResult.Value<TokenKind, Expression>(number.Value, input, number.Remainder)
            : TokenListParserResult.CastEmpty<TokenKind, NumberExpression, Expression>(number);
    }

    // Below here each level of nesting takes two or three frames of the stack. The combinators would take a dozen, and
    // the deepest permitted nesting must fit the small stacks of browsers and pool threads.
    private static TokenListParserResult<TokenKind, Expression> ReadNamed(
        TokenList<TokenKind> input, Token<TokenKind> name, TokenList<TokenKind> rest)
    {
        var next = rest.ConsumeToken();
        var kind = next.HasValue ? next.Value.Kind : TokenKind.None;
        if (kind == TokenKind.OpenParenthesis)
            return ReadArguments(name, next.Remainder);
        if (kind != TokenKind.OpenBracket)
        {
            return TokenListParserResult.Value<TokenKind, Expression>(
                new NameExpression(name.ToSourceSpan(), name.ToStringValue()), input, rest);
        }

        var index = Closed(ReadExpression(next.Remainder), TokenKind.CloseBracket);
        return index.HasValue
            ? TokenListParserResult.Value<TokenKind, Expression>(
                new IndexExpression(name.ToSourceSpan(), name.ToStringValue(), index.Value), input, index.Remainder)
            : index;
    }

    private static TokenListParserResult<TokenKind, Expression> ReadArguments(
        Token<TokenKind> name, TokenList<TokenKind> rest)
    {
        var arguments = Separated(ReadExpression, TokenKind.CloseParenthesis)(rest);
        return arguments.HasValue
            ? TokenListParserResult.Value<TokenKind, Expression>(
                new CallExpression(name.ToSourceSpan(), name.ToStringValue(), [.. arguments.Value]), rest,
                arguments.Remainder)
            : TokenListParserResult.CastEmpty<TokenKind, Expression[], Expression>(arguments);
    }

    private static TokenListParserResult<TokenKind, Expression> ReadConditional(
        Token<TokenKind> start, TokenList<TokenKind> rest)
    {
        var condition = ReadExpression(rest);
        if (!condition.HasValue || !TrySkip("then", condition.Remainder, out rest))
            return condition.HasValue ? Missing("'then'", condition.Remainder) : condition;
        var whenTrue = ReadExpression(rest);
        if (!whenTrue.HasValue || !TrySkip("else", whenTrue.Remainder, out rest))
            return whenTrue.HasValue ? Missing("'else'", whenTrue.Remainder) : whenTrue;
        var whenFalse = ReadExpression(rest);
        if (!whenFalse.HasValue)
            return whenFalse;
        var choice = new ConditionalExpression(
            start.ToSourceSpan(), condition.Value, whenTrue.Value, whenFalse.Value);
        return TokenListParserResult.Value<TokenKind, Expression>(choice, rest, whenFalse.Remainder);
    }

    private static TokenListParserResult<TokenKind, Expression> Closed(
        TokenListParserResult<TokenKind, Expression> inner, TokenKind close)
    {
        if (!inner.HasValue)
            return inner;
        var next = inner.Remainder.ConsumeToken();
        return next.HasValue && next.Value.Kind == close
            ? TokenListParserResult.Value(inner.Value, inner.Location, next.Remainder)
            : Missing(Spelling.Of(close), inner.Remainder);
    }

    private static bool TrySkip(string word, TokenList<TokenKind> input, out TokenList<TokenKind> rest)
    {
        var next = input.ConsumeToken();
        rest = next.Remainder;
        return next.HasValue && next.Value.Kind == TokenKind.Word && next.Value.ToStringValue() == word;
    }

    private static TokenListParserResult<TokenKind, Expression> Missing(string what, TokenList<TokenKind> at) =>
        TokenListParserResult.Empty<TokenKind, Expression>(at, [what]);
}
