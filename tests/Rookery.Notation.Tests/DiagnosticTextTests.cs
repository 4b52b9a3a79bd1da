namespace Rookery.Notation.Tests;

public sealed class DiagnosticTextTests
{
    [Fact]
    public void Render_PlaceInLine_ShowsLineCaretAndHint()
    {
        var source = new SourceText("count.fj", "task t()\n    jion\n");
        var diagnostic = new Diagnostic("FJ012", new(2, 5, 4), "found 'jion'", "did you mean join?");
        Assert.Equal(
            "count.fj:2:5: error FJ012: found 'jion'\n"
            + "    2 |     jion\n"
            + "      |     ^^^^\n"
            + "  hint: did you mean join?\n",
            DiagnosticText.Render(source, diagnostic));
    }

    [Fact]
    public void Render_WholeText_ShowsNoLine() => Assert.Equal(
        "count.fj: error FJ010: no start line\n",
        DiagnosticText.Render(new SourceText("count.fj", ""), new Diagnostic("FJ010", default, "no start line")));

    [Fact]
    public void Render_TabBeforeTheCaret_IsShownAsOneBlank() => Assert.Equal(
        "a: error X: y\n".Replace("a:", "a:1:2:", StringComparison.Ordinal) + "    1 |  b\n      |  ^\n",
        DiagnosticText.Render(new SourceText("a", "\tb"), new Diagnostic("X", new(1, 2, 1), "y")));

    [Fact]
    public void Render_VeryLongLine_ShowsThePartAroundTheCaret()
    {
        string text = new string('a', 5_000) + "!" + new string('b', 5_000);
        string shown = DiagnosticText.Render(new SourceText("a", text), new Diagnostic("X", new(1, 5_001, 1), "y"));
        string[] lines = shown.Split('\n');
        Assert.All(lines, line => Assert.True(line.Length < 130));
        Assert.Equal('!', lines[1][lines[2].IndexOf('^', StringComparison.Ordinal)]);
    }
}
