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
        from arguments in Separated(Expression, TokenKind.CloseParenthesis)
        select arguments;

    private static TokenListParser<TokenKind, Expression> Parenthesised { get; } =
        from open in Sign(TokenKind.OpenParenthesis)
        from inner in Expression
        from close in Sign(TokenKind.CloseParenthesis)
        select inner;

    private static TokenListParser<TokenKind, Expression> Conditional { get; } =
        from start in Word("if")
        from condition in Expression
        from then in Word("then")
        from whenTrue in Expression
        from otherwise in Word("else")
        from whenFalse in Expression
        select (Expression)new ConditionalExpression(start.ToSourceSpan(), condition, whenTrue, whenFalse);

    private static TokenListParser<TokenKind, Expression> Named { get; } = ReadNamed;

    private static TokenListParser<TokenKind, Expression> Value { get; } = ReadValue;

    private static TokenListParserResult<TokenKind, Expression> ReadExpression(TokenList<TokenKind> input)
    {
        var stack = new OperatorStack();
        var rest = input;
        while (true)
        {
            rest = SkipPrefixes(rest, stack);
            var value = Value(rest);
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
            TokenKind.Name => Named(input),
            TokenKind.OpenParenthesis => Parenthesised(input),
            TokenKind.Word when first.Value.ToStringValue() == "if" => Conditional(input),
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

    private static TokenListParserResult<TokenKind, Expression> ReadNamed(TokenList<TokenKind> input)
    {
        var name = input.ConsumeToken();
        string text = name.Value.ToStringValue();
        var span = name.Value.ToSourceSpan();
        var next = name.Remainder.ConsumeToken();
        if (next.HasValue && next.Value.Kind == TokenKind.OpenParenthesis)
        {
            return Arguments.Select(a => (Expression)new CallExpression(span, text, [.. a]))(name.Remainder);
        }

        if (next.HasValue && next.Value.Kind == TokenKind.OpenBracket)
        {
            return (from open in Sign(TokenKind.OpenBracket)
                    from index in Expression
                    from close in Sign(TokenKind.CloseBracket)
                    select (Expression)new IndexExpression(span, text, index))(name.Remainder);
        }

        return TokenListParserResult.Value<TokenKind, Expression>(
            new NameExpression(span, text), input, name.Remainder);
    }
}
