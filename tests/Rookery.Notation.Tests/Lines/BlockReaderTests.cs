using System.Collections.Frozen;
using System.Collections.Immutable;
using Rookery.Notation.Lines;

namespace Rookery.Notation.Tests.Lines;

public sealed class BlockReaderTests
{
    [Theory]
    [InlineData("a\nb", "a b")]
    [InlineData("a\n  b\n  c\nd", "a(b c) d")]
    [InlineData("a\n b\n   c\nd\n  e", "a(b(c)) d(e)")]
    [InlineData("a\n  b\n    c\n  d", "a(b(c) d)")]
    public void Read_Indentation_MakesBlocks(string text, string expected)
    {
        var (blocks, errors) = Read(text);
        Assert.Empty(errors);
        Assert.Equal(expected, Show(blocks));
    }

    [Theory]
    [InlineData("  a\nb", "a b", "NT007", 1, 3)]
    [InlineData("a\n    b\n  c\n  d\ne", "a(b c d) e", "NT008", 3, 3)]
    [InlineData("a\n    b\n\tc\n    d\ne", "a(b c d) e", "NT006", 3, 1)]
    public void Read_BadIndentation_IsReportedOnceAndReadOn(
        string text, string expected, string code, int line, int column)
    {
        var (blocks, errors) = Read(text);
        var error = Assert.Single(errors);
        Assert.Equal((code, line, column), (error.Code, error.Span.Line, error.Span.Column));
        Assert.Equal(expected, Show(blocks));
    }

    [Fact]
    public void Read_BlocksDeeperThanAllowed_GivesOneLimitError()
    {
        string text = string.Concat(Enumerable.Range(0, 3_000).Select(i => new string(' ', i) + "a\n"))[..900_000];
        var error = Assert.Single(Read(text).Errors);
        Assert.Equal(("NT005", NotationLimits.BlocksMax + 2, true), (error.Code, error.Span.Line, error.IsLimit));
    }

    private static (ImmutableArray<LineBlock> Blocks, ImmutableArray<Diagnostic> Errors) Read(string text)
    {
        var errors = new DiagnosticList();
        var lines = LineReader.Read(new SourceText("test", text), FrozenSet<string>.Empty, errors);
        return (BlockReader.Read(lines, errors), errors.ToImmutable());
    }

    private static string Show(ImmutableArray<LineBlock> blocks) => string.Join(' ', blocks.Select(block =>
        block.Head.First.ToStringValue() + (block.Body.IsEmpty ? "" : $"({Show(block.Body)})")));
}
