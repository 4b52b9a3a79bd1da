using System.Collections.Immutable;
using Rookery.Checking.Syntax;
using Rookery.Notation.Expressions;
using Rookery.Notation.Lines;
using Superpower;
using Superpower.Model;
using static Rookery.Notation.Expressions.TokenParsers;

namespace Rookery.Checking.Parsing;

/// <summary>One parser for each kind of line inside operations.</summary>
internal static class LineParsers
{
    private static TokenListParser<TokenKind, Expression> Value { get; } = ExpressionParser.Expression;

    private static TokenListParser<TokenKind, OrderMark?> Order { get; } = input =>
    {
        var next = input.ConsumeToken();
        AccessOrder order = next.HasValue ? OrderOf(next.Value.ToStringValue()) : AccessOrder.Unmarked;
        return order == AccessOrder.Unmarked
            ? TokenListParserResult.Value<TokenKind, OrderMark?>(null, input, input)
            : TokenListParserResult.Value<TokenKind, OrderMark?>(
                new(order, next.Value.ToSourceSpan()), input, next.Remainder);
    };

    /// <summary><c>let NAME = E</c></summary>
    public static TokenListParser<TokenKind, LetStatement> Let { get; } =
        from start in Word("let")
        from name in Name("a name")
        from assign in Sign(TokenKind.Assign)
        from value in Value
        from order in Order
        select new LetStatement(start.ToSourceSpan(), ToName(name), value, order);

    /// <summary><c>NAME = E</c> or <c>NAME[I] = E</c></summary>
    public static TokenListParser<TokenKind, StoreStatement> Store { get; } =
        from name in Name("a name")
        from index in OptionalIndex(Value)
        from assign in Sign(TokenKind.Assign)
        from value in Value
        from order in Order
        select new StoreStatement(name.ToSourceSpan(), ToName(name), index, value, order);

    /// <summary><c>cas(...)</c> and the like</summary>
    public static TokenListParser<TokenKind, UpdateStatement> Update { get; } =
        from call in Value
        from order in Order
        select new UpdateStatement(call.Span, call, order);

    /// <summary><c>fence [acquire|release|full]</c></summary>
    public static TokenListParser<TokenKind, FenceStatement> Fence { get; } =
        from start in Word("fence")
        from order in FenceOrder
        select new FenceStatement(start.ToSourceSpan(), order);

    /// <summary><c>return [E, ...]</c></summary>
    public static TokenListParser<TokenKind, ReturnStatement> Return { get; } =
        from start in Word("return")
        from values in List(Value)
        from order in Order
        select new ReturnStatement(start.ToSourceSpan(), values, order);

    /// <summary><c>assert C</c></summary>
    public static TokenListParser<TokenKind, AssertStatement> Assert { get; } =
        from start in Word("assert")
        from condition in Condition
        select new AssertStatement(start.ToSourceSpan(), condition);

    /// <summary><c>if C</c></summary>
    public static TokenListParser<TokenKind, ConditionSyntax> If { get; } =
        from start in Word("if")
        from condition in Condition
        select condition with { Span = start.ToSourceSpan() };

    /// <summary><c>else if C</c></summary>
    public static TokenListParser<TokenKind, ConditionSyntax> ElseIf { get; } =
        from start in Word("else")
        from condition in If
        select condition;

    /// <summary><c>else</c></summary>
    public static TokenListParser<TokenKind, Token<TokenKind>> Else { get; } = Word("else");

    /// <summary><c>while C</c></summary>
    public static TokenListParser<TokenKind, ConditionSyntax> While { get; } =
        from start in Word("while")
        from condition in Condition
        select condition with { Span = start.ToSourceSpan() };

    private static TokenListParser<TokenKind, ConditionSyntax> Condition => input =>
        (from value in Value
         from order in Order
         select new ConditionSyntax(value.Span, value, order))(input);

    private static TokenListParser<TokenKind, AccessOrder> FenceOrder => input =>
    {
        var next = input.ConsumeToken();
        if (!next.HasValue)
            return TokenListParserResult.Value(AccessOrder.Full, input, input);
        string word = next.Value.ToStringValue();
        AccessOrder order = word == "full" ? AccessOrder.Full : OrderOf(word);
        return order is AccessOrder.Full or AccessOrder.Acquire or AccessOrder.Release
            ? TokenListParserResult.Value(order, input, next.Remainder)
            : TokenListParserResult.Empty<TokenKind, AccessOrder>(input, ["'acquire'", "'release'", "'full'"]);
    };

    /// <summary><c>lock NAME</c> or <c>unlock NAME</c></summary>
    public static TokenListParser<TokenKind, LockStatement> Lock(bool isUnlock) =>
        from start in Word(isUnlock ? "unlock" : "lock")
        from name in Name("the name of a lock")
        select new LockStatement(start.ToSourceSpan(), ToName(name), isUnlock);

    /// <summary>A name with its place.</summary>
    public static NameSyntax ToName(Token<TokenKind> token) => new(token.ToStringValue(), token.ToSourceSpan());

    /// <summary><c>[E]</c>, or nothing.</summary>
    public static TokenListParser<TokenKind, Expression?> OptionalIndex(
        TokenListParser<TokenKind, Expression> inside) =>
        Optional(
            TokenKind.OpenBracket,
            from value in inside
            from close in Sign(TokenKind.CloseBracket)
            select value);

    /// <summary>What follows a sign, or nothing where the sign is missing.</summary>
    public static TokenListParser<TokenKind, T?> Optional<T>(TokenKind sign, TokenListParser<TokenKind, T> rest)
        where T : class => input =>
        {
            var next = input.ConsumeToken();
            if (!next.HasValue || next.Value.Kind != sign)
                return TokenListParserResult.Value<TokenKind, T?>(null, input, input);
            return rest.Select(value => (T?)value)(next.Remainder);
        };

    /// <summary>Items between commas as far as they reach; possibly none.</summary>
    public static TokenListParser<TokenKind, ImmutableArray<T>> List<T>(TokenListParser<TokenKind, T> item) =>
        input =>
        {
            var items = ImmutableArray.CreateBuilder<T>();
            var rest = input;
            while (!rest.IsAtEnd)
            {
                var one = item(rest);
                if (!one.HasValue)
                    return TokenListParserResult.CastEmpty<TokenKind, T, ImmutableArray<T>>(one);
                items.Add(one.Value);
                var next = one.Remainder.ConsumeToken();
                rest = one.Remainder;
                if (!next.HasValue || next.Value.Kind != TokenKind.Comma)
                    break;
                rest = next.Remainder;
                if (rest.IsAtEnd)
                    return TokenListParserResult.CastEmpty<TokenKind, T, ImmutableArray<T>>(item(rest));
            }

            return TokenListParserResult.Value(items.ToImmutable(), input, rest);
        };

    private static AccessOrder OrderOf(string word) => word switch
    {
        "acquire" => AccessOrder.Acquire,
        "release" => AccessOrder.Release,
        "relaxed" => AccessOrder.Relaxed,
        _ => AccessOrder.Unmarked,
    };
}
