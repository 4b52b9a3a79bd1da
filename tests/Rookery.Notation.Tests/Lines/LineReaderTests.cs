using System.Collections.Frozen;
using System.Collections.Immutable;
using Rookery.Notation.Lines;

namespace Rookery.Notation.Tests.Lines;

public sealed class LineReaderTests
{
    private static readonly FrozenSet<string> Reserved =
        FrozenSet.Create(StringComparer.Ordinal, "if", "then", "else", "not");

    [Fact]
    public void Read_BlankLinesAndComments_AreLeftOut()
    {
        var (lines, errors) = Read("# one\n\n   \n  a b # c\n\t# only a comment\n");
        Assert.Empty(errors);
        var line = Assert.Single(lines);
        Assert.Equal((4, 2, 6), (line.Number, line.Indent, line.EndColumn));
        Assert.Equal(["a", "b"], line.Tokens.Select(token => token.ToStringValue()));
    }

    [Theory]
    [InlineData("1..5", "Number DotDot Number")]
    [InlineData("a<=b<<c<d", "Name LessEqual Name ShiftLeft Name Less Name")]
    [InlineData("a==b=c!=d", "Name Equal Name Assign Name NotEqual Name")]
    [InlineData("x[1_000].y:\"t\"", "Name OpenBracket Number CloseBracket Dot Name Colon Text")]
    [InlineData("if(n)", "Word OpenParenthesis Name CloseParenthesis")]
    [InlineData("übung_2", "Name")]
    public void Read_Signs_TakesTheLongest(string text, string kinds) =>
        Assert.Equal(kinds, string.Join(' ', Assert.Single(Read(text).Lines).Tokens.Select(token => token.Kind)));

    [Theory]
    [InlineData("\ta", "NT006", 1, 1)]
    [InlineData("    \ta", "NT006", 1, 5)]
    [InlineData("a\n  b §", "NT009", 2, 5)]
    [InlineData("a && b", "NT009", 1, 3)]
    [InlineData("\"abc", "NT010", 1, 1)]
    [InlineData("x 9223372036854775809", "NT011", 1, 3)]
    [InlineData("x 99999999999999999999999", "NT011", 1, 3)]
    [InlineData("x 12ab", "NT012", 1, 3)]
    [InlineData("a \u0000", "NT009", 1, 3)]
    public void Read_BadLine_IsReportedAtItsPlace(string text, string code, int line, int column)
    {
        var error = Assert.Single(Read(text).Errors);
        Assert.Equal((code, line, column), (error.Code, error.Span.Line, error.Span.Column));
    }

    [Fact]
    public void Read_ManyBadLines_ReportsOneErrorEach() =>
        Assert.Equal(["1", "2", "4"], Read("?\n!\na\n'\n").Errors.Select(e => $"{e.Span.Line}"));

    [Fact]
    public void Read_AsManyTokensAsAllowed_IsFine()
    {
        string text = string.Join(' ', Enumerable.Repeat("a", NotationLimits.TokensMax));
        Assert.Empty(Read(text).Errors);
        var error = Assert.Single(Read(text + " b").Errors);
        Assert.True(error.IsLimit);
        Assert.Equal(("NT003", (2 * NotationLimits.TokensMax) + 1), (error.Code, error.Span.Column));
    }

    [Theory]
    [InlineData("(")]
    [InlineData("[")]
    [InlineData("not ")]
    [InlineData("-")]
    [InlineData("if 1 then 2 else ")]
    public void Read_NestingAsDeepAsAllowed_IsFine(string level)
    {
        Assert.Empty(Read(Repeat(level, NotationLimits.NestingMax) + "1").Errors);
        var error = Assert.Single(Read(Repeat(level, NotationLimits.NestingMax + 1) + "1").Errors);
        Assert.Equal(("NT004", true), (error.Code, error.IsLimit));
    }

    [Fact]
    public void Read_TwentyThousandParentheses_GivesOneErrorAtTheFirstTooDeep()
    {
        var error = Assert.Single(Read(Repeat("(", 20_000) + "1" + Repeat(")", 20_000)).Errors);
        Assert.Equal(("NT004", NotationLimits.NestingMax + 1), (error.Code, error.Span.Column));
    }

    [Fact]
    public void Read_ManyShallowBrackets_AreNotDeep() => Assert.Empty(Read(Repeat("(- - a) ", 1_000)).Errors);

    [Fact]
    public void Read_TextBeyondItsLimits_IsRefusedWhole()
    {
        var (lines, errors) = Read(new string('\n', NotationLimits.LinesMax));
        Assert.Empty(lines);
        Assert.Equal("NT002", Assert.Single(errors).Code);
        Assert.Empty(Read(new string('\n', NotationLimits.LinesMax - 1)).Errors);
        Assert.Equal("NT001", Assert.Single(Read(new string(' ', NotationLimits.CharactersMax + 1)).Errors).Code);
    }

    private static (ImmutableArray<SourceLine> Lines, ImmutableArray<Diagnostic> Errors) Read(string text)
    {
        var errors = new DiagnosticList();
        var lines = LineReader.Read(new SourceText("test", text), Reserved, errors);
        return (lines, errors.ToImmutable());
    }

    private static string Repeat(string text, int count) => string.Concat(Enumerable.Repeat(text, count));
}
