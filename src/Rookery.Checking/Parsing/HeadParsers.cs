using System.Collections.Immutable;
using Rookery.Checking.Syntax;
using Rookery.Notation.Expressions;
using Rookery.Notation.Lines;
using Superpower;
using Superpower.Model;
using static Rookery.Checking.Parsing.LineParsers;
using static Rookery.Notation.Expressions.TokenParsers;

namespace Rookery.Checking.Parsing;

/// <summary>One parser for each kind of line outside operations.</summary>
internal static class HeadParsers
{
    private static TokenListParser<TokenKind, InvocationSyntax> Invocation { get; } =
        from name in Name("the name of an operation")
        from arguments in ExpressionParser.Arguments
        select new InvocationSyntax(ToName(name), [.. arguments]);

    private static TokenListParser<TokenKind, BindingSyntax> Binding { get; } =
        from name in Name("the name of a parameter")
        from assign in Sign(TokenKind.Assign)
        from value in Integer
        select new BindingSyntax(ToName(name), value);

    /// <summary><c>param NAME = INT [in INT..INT]</c></summary>
    public static TokenListParser<TokenKind, ParameterSyntax> Parameter { get; } =
        from start in Word("param")
        from name in Name("the name of a parameter")
        from assign in Sign(TokenKind.Assign)
        from value in Integer
        from range in Range
        select new ParameterSyntax(ToName(name), value.Value, value.Span, range.Min, range.Max);

    /// <summary><c>const NAME = E</c></summary>
    public static TokenListParser<TokenKind, ConstantSyntax> Constant { get; } =
        from start in Word("const")
        from name in Name("the name of a constant")
        from assign in Sign(TokenKind.Assign)
        from value in ExpressionParser.Expression
        select new ConstantSyntax(ToName(name), value);

    /// <summary><c>shared NAME[SIZE] = E</c></summary>
    public static TokenListParser<TokenKind, SharedSyntax> Shared { get; } =
        from start in Word("shared")
        from name in Name("a name")
        from size in OptionalIndex(ExpressionParser.Expression)
        from initial in Optional(TokenKind.Assign, ExpressionParser.Expression)
        select new SharedSyntax(ToName(name), size, initial);

    /// <summary><c>operation NAME(PARAMETERS)</c></summary>
    public static TokenListParser<TokenKind, OperationSyntax> Operation { get; } =
        from start in Word("operation")
        from name in Name("the name of an operation")
        from open in Sign(TokenKind.OpenParenthesis)
        from parameters in Separated(Name("the name of an argument"), TokenKind.CloseParenthesis)
        select new OperationSyntax(ToName(name), [.. parameters.Select(ToName)], []);

    /// <summary><c>scenario "NAME" [with P = INT, ...]</c></summary>
    public static TokenListParser<TokenKind, ScenarioSyntax> Scenario { get; } =
        from start in Word("scenario")
        from name in Text("a name in quotes")
        from bindings in Bindings
        select new ScenarioSyntax(name.ToStringValue()[1..^1], name.ToSourceSpan(), bindings, []);

    /// <summary><c>thread NAME: OPERATION(...), ...</c></summary>
    public static TokenListParser<TokenKind, ThreadSyntax> Thread { get; } =
        from start in Word("thread")
        from name in Name("the name of a thread")
        from colon in Sign(TokenKind.Colon)
        from first in Invocation
        from more in More(Invocation)
        select new ThreadSyntax(ToName(name), [first, .. more]);

    /// <summary><c>drain OPERATION()</c></summary>
    public static TokenListParser<TokenKind, InvocationSyntax> Drain { get; } =
        from start in Word("drain")
        from invocation in Invocation
        select invocation;

    /// <summary><c>observe NAME, ...</c></summary>
    public static TokenListParser<TokenKind, ImmutableArray<NameSyntax>> Observe { get; } =
        from start in Word("observe")
        from first in Name("the name of shared memory")
        from more in More(Name("the name of shared memory"))
        select ImmutableArray.Create<NameSyntax>([ToName(first), .. more.Select(ToName)]);

    /// <summary><c>exists CONDITION</c></summary>
    public static TokenListParser<TokenKind, ConditionSyntax> Exists { get; } =
        from start in Word("exists")
        from value in ExpressionParser.Expression
        select new ConditionSyntax(start.ToSourceSpan(), value, null);

    /// <summary><c>expect once</c>, or with two words</summary>
    public static TokenListParser<TokenKind, ExpectationSyntax> Expect(
        ExpectationKind kind, params string[] words) => input =>
        {
            var rest = input;
            var span = input.ConsumeToken().Value.ToSourceSpan();
            foreach (string word in (string[])["expect", .. words])
            {
                var next = Word(word)(rest);
                if (!next.HasValue)
                    return TokenListParserResult.CastEmpty<TokenKind, Token<TokenKind>, ExpectationSyntax>(next);
                rest = next.Remainder;
            }

            return TokenListParserResult.Value(new ExpectationSyntax(span, kind, default, [], []), input, rest);
        };

    /// <summary><c>expect linearizable OBJECT(OPERATIONS) [, NAME may miss ...]</c></summary>
    public static TokenListParser<TokenKind, LinearizableSyntax> Linearizable { get; } =
        from start in Word("expect")
        from word in Word("linearizable")
        from name in Name("deque, queue or stack")
        from open in Sign(TokenKind.OpenParenthesis)
        from operations in Separated(Name("the name of an operation"), TokenKind.CloseParenthesis)
        from missing in More(
            from operation in Name("the name of an operation")
            from may in Word("may")
            from miss in Word("miss")
            select ToName(operation))
        select new LinearizableSyntax(start.ToSourceSpan(), ToName(name), [.. operations.Select(ToName)], missing);

    private static TokenListParser<TokenKind, (long Min, long Max)> Range => input =>
    {
        if (input.IsAtEnd)
            return TokenListParserResult.Value((long.MinValue, long.MaxValue), input, input);
        return (from word in Word("in")
                from lower in Integer
                from dots in Sign(TokenKind.DotDot)
                from upper in Integer
                select (lower.Value, upper.Value))(input);
    };

    private static TokenListParser<TokenKind, ImmutableArray<BindingSyntax>> Bindings => input =>
    {
        if (input.IsAtEnd)
            return TokenListParserResult.Value(ImmutableArray<BindingSyntax>.Empty, input, input);
        return (from word in Word("with")
                from first in Binding
                from more in More(Binding)
                select ImmutableArray.Create<BindingSyntax>([first, .. more]))(input);
    };

    /// <summary>Items each after a comma, to the end of the line.</summary>
    private static TokenListParser<TokenKind, ImmutableArray<T>> More<T>(TokenListParser<TokenKind, T> item) =>
        input =>
        {
            var items = ImmutableArray.CreateBuilder<T>();
            var rest = input;
            while (true)
            {
                var comma = rest.ConsumeToken();
                if (!comma.HasValue || comma.Value.Kind != TokenKind.Comma)
                    return TokenListParserResult.Value(items.ToImmutable(), input, rest);
                var one = item(comma.Remainder);
                if (!one.HasValue)
                    return TokenListParserResult.CastEmpty<TokenKind, T, ImmutableArray<T>>(one);
                items.Add(one.Value);
                rest = one.Remainder;
            }
        };
}
