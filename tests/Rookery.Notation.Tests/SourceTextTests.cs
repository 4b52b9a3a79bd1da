namespace Rookery.Notation.Tests;

public sealed class SourceTextTests
{
    [Theory]
    [InlineData("", new[] { "" })]
    [InlineData("a", new[] { "a" })]
    [InlineData("a\n", new[] { "a", "" })]
    [InlineData("a\r\nb\rc\nd", new[] { "a", "b", "c", "d" })]
    [InlineData("\r\n\r\n", new[] { "", "", "" })]
    [InlineData("\uFEFFa\nb", new[] { "a", "b" })]
    public void Lines_AnyLineBreaks_AreCutAsEditorsDo(string text, string[] lines)
    {
        var source = new SourceText("t", text);
        Assert.Equal(lines, Enumerable.Range(1, source.LineCount).Select(source.Line));
    }
}
