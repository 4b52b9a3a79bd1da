using Rookery.Notation.Expressions;
using Rookery.Notation.Lines;
using Rookery.Programs.Syntax;
using Superpower;
using Superpower.Model;
using static Rookery.Notation.Expressions.TokenParsers;

namespace Rookery.Programs.Parsing;

/// <summary>One parser for each kind of line.</summary>
internal static class LineParsers
{
    private static TokenListParser<TokenKind, Token<TokenKind>> Assign { get; } = Sign(TokenKind.Assign);

    private static TokenListParser<TokenKind, Range> Span { get; } =
        from lower in Integer
        from dots in Sign(TokenKind.DotDot)
        from upper in Integer
        select new Range(lower, upper);

    private static TokenListParser<TokenKind, NameSyntax> TaskName { get; } =
        Name("the name of a task").Select(ToName);

    /// <summary><c>param NAME = INT [in INT..INT]</c></summary>
    public static TokenListParser<TokenKind, ParameterDeclaration> Parameter { get; } =
        from start in Word("param")
        from name in Name("the name of a parameter")
        from assign in Assign
        from value in Integer
        from range in Optional("in", Span)
        select new ParameterDeclaration(
            name.ToStringValue(), name.ToSourceSpan(), value.Value, value.Span,
            range?.Lower.Value ?? long.MinValue, range?.Upper.Value ?? long.MaxValue);

    /// <summary><c>const NAME = EXPR</c></summary>
    public static TokenListParser<TokenKind, ConstantDeclaration> Constant { get; } =
        from start in Word("const")
        from name in Name("the name of a constant")
        from assign in Assign
        from value in ExpressionParser.Expression
        select new ConstantDeclaration(name.ToStringValue(), name.ToSourceSpan(), value);

    /// <summary><c>data NAME = "FILE" column "NAME"</c></summary>
    public static TokenListParser<TokenKind, DataDeclaration> Data { get; } =
        from start in Word("data")
        from name in Name("the name of the data")
        from assign in Assign
        from file in Text("a file in quotes")
        from word in Word("column")
        from column in Text("a column in quotes")
        select new DataDeclaration(
            name.ToStringValue(), name.ToSourceSpan(), Unquoted(file), file.ToSourceSpan(), Unquoted(column),
            column.ToSourceSpan());

    /// <summary><c>start NAME(ARGS)</c></summary>
    public static TokenListParser<TokenKind, StartSyntax> Start { get; } =
        from start in Word("start")
        from callee in TaskName
        from arguments in ExpressionParser.Arguments
        select new StartSyntax(start.ToSourceSpan(), callee, [.. arguments]);

    /// <summary><c>task NAME(PARAMS)</c></summary>
    public static TokenListParser<TokenKind, TaskSyntax> TaskHead { get; } =
        from start in Word("task")
        from name in TaskName
        from open in Sign(TokenKind.OpenParenthesis)
        from parameters in Separated(Name("the name of a parameter"), TokenKind.CloseParenthesis)
        select new TaskSyntax(name, [.. parameters.Select(ToName)], [], 0);

    /// <summary><c>work E</c> or <c>block E</c></summary>
    public static TokenListParser<TokenKind, WorkStatement> Work(bool isBlock) =>
        from start in Word(isBlock ? "block" : "work")
        from amount in ExpressionParser.Expression
        select new WorkStatement(start.ToSourceSpan(), isBlock, amount);

    /// <summary><c>fork T(ARGS)</c> or <c>call T(ARGS)</c></summary>
    public static TokenListParser<TokenKind, InvokeStatement> Invoke(bool isFork) =>
        from start in Word(isFork ? "fork" : "call")
        from callee in TaskName
        from arguments in ExpressionParser.Arguments
        select new InvokeStatement(start.ToSourceSpan(), isFork, callee, [.. arguments]);

    /// <summary><c>join</c></summary>
    public static TokenListParser<TokenKind, JoinStatement> Join { get; } =
        from start in Word("join")
        select new JoinStatement(start.ToSourceSpan());

    /// <summary><c>let NAME = E</c></summary>
    public static TokenListParser<TokenKind, LetStatement> Let { get; } =
        from start in Word("let")
        from name in Name("a name")
        from assign in Assign
        from value in ExpressionParser.Expression
        select new LetStatement(start.ToSourceSpan(), ToName(name), value);

    /// <summary><c>if E</c></summary>
    public static TokenListParser<TokenKind, Expression> If { get; } =
        from start in Word("if")
        from condition in ExpressionParser.Expression
        select condition;

    /// <summary><c>else if E</c></summary>
    public static TokenListParser<TokenKind, Expression> ElseIf { get; } =
        from start in Word("else")
        from condition in If
        select condition;

    /// <summary><c>else</c></summary>
    public static TokenListParser<TokenKind, Token<TokenKind>> Else { get; } = Word("else");

    /// <summary><c>for X in A..B</c></summary>
    public static TokenListParser<TokenKind, LoopStatement> For { get; } =
        from start in Word("for")
        from variable in Name("the name of the loop's variable")
        from word in Word("in")
        from lower in ExpressionParser.Expression
        from dots in Sign(TokenKind.DotDot)
        from upper in ExpressionParser.Expression
        select new LoopStatement(start.ToSourceSpan(), false, ToName(variable), lower, upper, null, [], 0);

    /// <summary><c>fork for X in A..B [grain G]</c></summary>
    public static TokenListParser<TokenKind, LoopStatement> ForkFor { get; } =
        from start in Word("fork")
        from loop in For
        from grain in Optional("grain", ExpressionParser.Expression)
        select loop with { Span = start.ToSourceSpan(), IsParallel = true, Grain = grain };

    private static TokenListParser<TokenKind, T?> Optional<T>(string word, TokenListParser<TokenKind, T> rest)
        where T : class => input =>
        {
            var next = input.ConsumeToken();
            if (!next.HasValue || next.Value.ToStringValue() != word)
                return TokenListParserResult.Value<TokenKind, T?>(null, input, input);
            return rest.Select(value => (T?)value)(next.Remainder);
        };

    private static NameSyntax ToName(Token<TokenKind> token) => new(token.ToStringValue(), token.ToSourceSpan());

    private static string Unquoted(Token<TokenKind> token) => token.ToStringValue()[1..^1];

    private sealed record Range(NumberExpression Lower, NumberExpression Upper);
}
