using System.Collections.Frozen;
using Rookery.Notation.Expressions;
using Rookery.Notation.Lines;

namespace Rookery.Notation.Tests.Expressions;

public sealed class ExpressionParserTests
{
    private static readonly FrozenSet<string> Reserved =
        FrozenSet.Create(StringComparer.Ordinal, "and", "or", "not", "if", "then", "else");

    [Theory]
    [InlineData("1 + 2 * 3 < 8 and not x", "(((1 + (2 * 3)) < 8) and (not x))")]
    [InlineData("a - b - c", "((a - b) - c)")]
    [InlineData("a or b and c or d", "((a or (b and c)) or d)")]
    [InlineData("not a == b", "(not (a == b))")]
    [InlineData("not not a", "(not (not a))")]
    [InlineData("-a * b", "((- a) * b)")]
    [InlineData("- - 3", "(- -3)")]
    [InlineData("2 - -3", "(2 - -3)")]
    [InlineData("a & 1 == 0", "((a & 1) == 0)")]
    [InlineData("a | b ^ c & d << e + f", "(a | (b ^ (c & (d << (e + f)))))")]
    [InlineData("a / b % c * d", "(((a / b) % c) * d)")]
    [InlineData("if a then b else c + 1", "(if a then b else (c + 1))")]
    [InlineData("1 + if a then b else if c then d else e", "(1 + (if a then b else (if c then d else e)))")]
    [InlineData("f(a, b + 1)[2]", null)]
    [InlineData("sum(t, 0, n) + t[i - 1]", "(sum(t, 0, n) + t[(i - 1)])")]
    [InlineData("f()", "f()")]
    [InlineData("a = b", "(a == b)")]
    [InlineData("-9223372036854775808", "-9223372036854775808")]
    [InlineData("(a)", "a")]
    public void Parse_Expression_BindsAsDocumented(string text, string? expected) =>
        Assert.Equal(expected, Parse(text).Tree is { } tree ? Show(tree) : null);

    [Theory]
    [InlineData("1 +", 4, "found the end of the line, expected a value")]
    [InlineData("1 + )", 5, "found ')', expected a value")]
    [InlineData("(1", 3, "found the end of the line, expected ')'")]
    [InlineData("f(1 2)", 5, "found '2', expected ',' or ')'")]
    [InlineData("a[1", 4, "found the end of the line, expected ']'")]
    [InlineData("if a b else c", 6, "found 'b', expected 'then'")]
    [InlineData("if a then b", 12, "found the end of the line, expected 'else'")]
    [InlineData("1 2", 3, "found '2', expected the end of the line")]
    [InlineData("a < b <= c", 7, "comparisons cannot be chained")]
    [InlineData("9223372036854775808", 1, "this number does not fit in 64 bits")]
    [InlineData("- (9223372036854775808)", 4, "this number does not fit in 64 bits")]
    [InlineData("a + then", 5, "found 'then', expected a value")]
    public void Parse_BadExpression_SaysWhatWasFoundAndExpected(string text, int column, string what)
    {
        var error = Parse(text).Error!;
        Assert.Equal((column, what), (error.Span.Column, error.What));
    }

    [Theory]
    [InlineData("f(1 + (", "))")]
    [InlineData("t[1 + (", ")]")]
    [InlineData("if 1 then 2 else (", ")")]
    [InlineData("if if 1 then 2 else 3 then 4 else ", "")]
    public void Parse_DeepestNesting_DoesNotExhaustASmallStack(string open, string close)
    {
        int count = NotationLimits.NestingMax / 2;
        string text = Repeat(open, count) + "1" + Repeat(close, count);
        Exception? failure = null;
        var thread = new Thread(
            () => failure = Record.Exception(() => Assert.NotNull(Parse(text).Tree)), maxStackSize: 1 << 20);
        thread.Start();
        thread.Join();
        Assert.Null(failure);
    }

    [Fact]
    public void Parse_LongChain_LeansToTheLeft()
    {
        var tree = Parse(string.Join(" + ", Enumerable.Repeat("1", 5_000))).Tree;
        var chain = Assert.IsType<BinaryExpression>(tree).Unchain(out var first);
        Assert.Equal(4_999, chain.Count);
        Assert.IsType<NumberExpression>(first);
    }

    private static (Expression? Tree, Diagnostic? Error) Parse(string text)
    {
        var errors = new DiagnosticList();
        var line = Assert.Single(LineReader.Read(new SourceText("test", text), Reserved, errors));
        if (!errors.IsEmpty)
            return (null, errors.ToImmutable()[0]);
        bool isGood = LineParser.TryParse(line, ExpressionParser.Expression, errors, out var tree);
        return isGood ? (tree, null) : (null, errors.ToImmutable()[0]);
    }

    private static string Repeat(string text, int count) => string.Concat(Enumerable.Repeat(text, count));

    private static string Show(Expression expression) => expression switch
    {
        NumberExpression number => $"{number.Value}",
        NameExpression name => name.Name,
        UnaryExpression unary => $"({(unary.Operator == UnaryOperator.Not ? "not" : "-")} {Show(unary.Operand)})",
        BinaryExpression binary => $"({Show(binary.Left)} {Sign(binary.Operator)} {Show(binary.Right)})",
        ConditionalExpression c => $"(if {Show(c.Condition)} then {Show(c.WhenTrue)} else {Show(c.WhenFalse)})",
        CallExpression call => $"{call.Name}({string.Join(", ", call.Arguments.Select(Show))})",
        IndexExpression index => $"{index.Name}[{Show(index.Index)}]",
        _ => throw new InvalidOperationException(),
    };

    private static string Sign(BinaryOperator op) => op switch
    {
        BinaryOperator.Or => "or",
        BinaryOperator.And => "and",
        BinaryOperator.Equal => "==",
        BinaryOperator.NotEqual => "!=",
        BinaryOperator.Less => "<",
        BinaryOperator.LessEqual => "<=",
        BinaryOperator.Greater => ">",
        BinaryOperator.GreaterEqual => ">=",
        BinaryOperator.BitOr => "|",
        BinaryOperator.BitXor => "^",
        BinaryOperator.BitAnd => "&",
        BinaryOperator.ShiftLeft => "<<",
        BinaryOperator.ShiftRight => ">>",
        BinaryOperator.Add => "+",
        BinaryOperator.Subtract => "-",
        BinaryOperator.Multiply => "*",
        BinaryOperator.Divide => "/",
        BinaryOperator.Remainder => "%",
    };
}
