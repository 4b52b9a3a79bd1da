using Rookery.Notation;
using Rookery.Testing;

namespace Rookery.Programs.Tests.Reading;

public sealed class ProgramReaderTests
{
    [Fact]
    public void Read_DesignExample_HasItsParts()
    {
        var program = Fj.Read(
            """
            # Count the birds on a strip of photo tiles.
            param grain = 25 in 1..1000            # a slider in the lab
            data tiles = "tiles.csv" column "us"

            task count(lo, hi)
                work 1

            start count(0, len(tiles))
            """);
        var parameter = Assert.Single(program.Parameters);
        Assert.Equal(("grain", 25, 1, 1000), (parameter.Name, parameter.Default, parameter.Min, parameter.Max));
        var data = Assert.Single(program.Data);
        Assert.Equal(("tiles", "tiles.csv", "us"), (data.Name, data.File, data.Column));
    }

    [Theory]
    [InlineData(
        "    jion",
        "2:5 FJ001 found 'jion', expected a statement: work, fork, call, join, let, if, else, for, block",
        "did you mean join?")]
    [InlineData(
        "    elif n",
        "2:5 FJ001 found 'elif', expected a statement: work, fork, call, join, let, if, else, for, block",
        "write else if")]
    [InlineData(
        "    t(n - 1)",
        "2:5 FJ006 found 't(', expected a statement",
        "write fork t(...) to let it run in parallel, or call t(...) to run it in place")]
    [InlineData("    x = 4", "2:5 FJ007 found 'x =', expected a statement", "write let x = ...")]
    [InlineData(
        "    else",
        "2:5 FJ005 found 'else' without an 'if' before it",
        "line it up with the if that it belongs to")]
    [InlineData("    work 2 +", "2:13 NT013 found the end of the line, expected a value", "")]
    [InlineData("    work", "2:9 NT013 found the end of the line, expected a value", "")]
    [InlineData("    fork t(n", "2:13 NT013 found the end of the line, expected ',' or ')'", "")]
    [InlineData("    fork 3(n)", "2:10 NT013 found '3', expected the name of a task", "")]
    [InlineData("    join all", "2:10 NT013 found 'all', expected the end of the line", "")]
    [InlineData(
        "    let then = 4",
        "2:9 NT013 found 'then', expected a name",
        "this word is reserved and cannot be a name")]
    [InlineData("    let x 4", "2:11 NT013 found '4', expected '='", "")]
    [InlineData("    for i on 0..4\n        join", "2:11 NT013 found 'on', expected 'in'", "")]
    [InlineData("    for i in 0 4\n        join", "2:16 NT013 found '4', expected '..'", "")]
    [InlineData(
        "    if n:\n        join",
        "2:9 NT013 found ':', expected the end of the line",
        "no colon is needed: the indentation makes the block")]
    [InlineData(
        "    if n",
        "2:9 FJ003 expected an indented block after 'if'",
        "indent what belongs to it by four blanks")]
    [InlineData(
        "    fork for i in 0..n",
        "2:23 FJ003 expected an indented block after 'fork for'",
        "indent what belongs to it by four blanks")]
    [InlineData(
        "    join\n        join",
        "3:9 FJ004 this line is indented under 'join', which takes no block",
        "line it up with the line above")]
    [InlineData("    work 1 &&  2", "2:12 NT009 unexpected character '&'", "write and")]
    [InlineData(
        "\tjoin",
        "2:1 NT006 a tab in the indentation",
        "indent with blanks only, for example four for each level")]
    public void Read_BadLineInATask_SaysWhatAndWhere(string lines, string expected, string hint) =>
        AssertError($"task t(n)\n{lines}\nstart t(1)", expected, hint);

    [Theory]
    [InlineData(
        "strat t(1)",
        "1:1 FJ002 found 'strat', expected param, const, data, task or start",
        "did you mean start?")]
    [InlineData("work 3", "1:1 FJ008 'work' stands outside any task", "indent it under a task")]
    [InlineData("param a 3", "1:9 NT013 found '3', expected '='", "")]
    [InlineData("param a = b", "1:11 NT013 found 'b', expected a number", "")]
    [InlineData("param a = 3 in 1", "1:17 NT013 found the end of the line, expected '..'", "")]
    [InlineData("param a = 5 in 7..9", "1:11 FJ021 the default 5 is outside 7..9", "both ends are included")]
    [InlineData("param a = 5 in 9..7", "1:7 FJ022 no value is in 9..7", "the smaller number comes first")]
    [InlineData("const t = 3", "2:6 FJ017 't' is already a constant (line 1)", "choose another name")]
    [InlineData("const a = a", "1:11 FJ024 'a' is declared below, in line 1", "move its line up")]
    [InlineData("data d = tiles.csv", "1:10 NT013 found 'tiles', expected a file in quotes", "")]
    [InlineData("data d = \"tiles.csv\"", "1:21 NT013 found the end of the line, expected 'column'", "")]
    [InlineData(
        "  const a = 1",
        "1:3 NT007 this line is indented, but nothing above it opens a block",
        "begin it in the first column")]
    public void Read_BadLineOutsideTasks_SaysWhatAndWhere(string line, string expected, string hint) =>
        AssertError($"{line}\ntask t(n)\n    work n\nstart t(1)", expected, hint);

    [Fact]
    public void Read_SecondStart_IsRefused() => AssertError(
        "task t(n)\n    work n\nstart t(1)\nstart t(2)", "4:1 FJ011 a second start line, the first is line 3",
        "keep one of them");

    [Theory]
    [InlineData("work m", "2:10 FJ012 unknown name 'm'", "")]
    [InlineData("fork u(1)", "2:10 FJ013 unknown task 'u'", "")]
    [InlineData("fork t(1, 2)", "2:10 FJ015 't' takes 1 argument, 2 given", "it is defined in line 1")]
    [InlineData("work mni(1, 2)", "2:10 FJ014 unknown function 'mni'", "did you mean min?")]
    [InlineData("work min(1)", "2:10 FJ016 min(a, b) was given 1 argument", "write min(a, b)")]
    [InlineData(
        "work len(3)",
        "2:14 FJ018 the first argument of len must be the name of data",
        "only data lines make rows and sums")]
    [InlineData("work n[3]", "2:10 FJ018 'n' is a local name, expected data", "only data lines make rows and sums")]
    [InlineData(
        "let c = 1",
        "2:9 FJ017 'c' is already a constant (line 4)",
        "choose another name: the program's own values do not change while it runs")]
    [InlineData("work d", "2:10 FJ019 'd' is data, expected a number", "write d[i], len(d) or sum(d, lo, hi)")]
    [InlineData("work len(c)", "2:14 FJ018 'c' is a constant, expected data", "only data lines make rows and sums")]
    [InlineData(
        "for n in 0..3\n        join",
        "2:9 FJ017 'n' is already a name of this task (line 1)",
        "choose another name")]
    [InlineData(
        "fork for i in 0..3\n        let n = i",
        "3:13 FJ020 'n' belongs to the task around this parallel loop (line 1)",
        "the loop's body runs in tasks of its own with copies of it, so a new value could not get back; use "
        + "another name")]
    [InlineData(
        "if n\n        let z = 1\n    work z",
        "4:10 FJ012 unknown name 'z'",
        "the one of line 3 ends with its block; give it a first value before the block")]
    public void Read_BadNames_SayWhatAndWhere(string lines, string expected, string hint)
    {
        string text = $"task t(n)\n    {lines}\nstart t(1)\nconst c = 1\ndata d = \"a.csv\" column \"x\"";
        int added = lines.Count(c => c == '\n');
        AssertError(text, expected.Replace("(line 4)", $"(line {4 + added})", StringComparison.Ordinal), hint);
    }

    [Theory]
    [InlineData("/etc/passwd")]
    [InlineData("../x.csv")]
    [InlineData("a/../../x.csv")]
    [InlineData("a/..")]
    [InlineData("C:/x.csv")]
    [InlineData("file://x.csv")]
    [InlineData("a\\b.csv")]
    [InlineData("~/x.csv")]
    [InlineData("")]
    [InlineData("./x.csv")]
    [InlineData("a//b.csv")]
    [InlineData(".. /x.csv")]
    [InlineData("x.csv.")]
    public void Read_PathOutsideTheFolder_IsRefused(string path)
    {
        var result = ProgramReader.Read(
            "test.fj", $"data d = \"{path}\" column \"x\"\ntask t()\n    join\nstart t()");
        var error = Assert.Single(result.Diagnostics);
        Assert.Equal(("FJ023", new SourceSpan(1, 10, path.Length + 2)), (error.Code, error.Span));
    }

    [Theory]
    [InlineData("tiles.csv")]
    [InlineData("a/b/c-d_e.csv")]
    [InlineData("zählung 1.csv")]
    [InlineData("..x/y..csv")]
    public void Read_PathInsideTheFolder_IsFine(string path) =>
        Assert.True(ProgramReader.Read(
            "test.fj", $"data d = \"{path}\" column \"x\"\ntask t()\n    join\nstart t()").IsValid);

    [Fact]
    public void Read_SeveralErrors_AreAllReportedInOrder()
    {
        var result = ProgramReader.Read(
            "test.fj",
            """
            param a = x
            task t(n)
                jion
                if n <
                    wrk 1
                else
                    work 2 )
                work 1
            strat t(1)
            """);
        Assert.Equal(
            ["1:11 NT013", "3:5 FJ001", "4:11 NT013", "5:9 FJ001", "7:16 NT013", "9:1 FJ002"],
            result.Diagnostics.Select(d => $"{d.Span.Line}:{d.Span.Column} {d.Code}"));
    }

    [Fact]
    public void Read_NoStart_SaysSo() => AssertError(
        "task t()\n    join", "0:0 FJ010 the program has no start line", "end it with start TASK(ARGUMENTS)");

    [Fact]
    public void Read_ThousandsOfErrors_ReportsTheFirstFifty()
    {
        var result = ProgramReader.Read("test.fj", string.Concat(Enumerable.Repeat("nonsense\n", 60_000)));
        Assert.Equal(DiagnosticList.CountMax, result.Diagnostics.Length);
    }

    [Fact]
    public void Read_ThousandsOfUnknownNames_DoesNotGuessForEach()
    {
        string text = string.Concat(Enumerable.Range(0, 20_000).Select(i => $"const c{i}abcdef = 1\n"))
            + "task t(n)\n" + string.Concat(Enumerable.Range(0, 20_000).Select(i => $"    work d{i}abcdef\n"))
            + "start t(1)";
        var result = ProgramReader.Read("test.fj", text);
        Assert.Equal(DiagnosticList.CountMax, result.Diagnostics.Length);
        Assert.Equal("did you mean c0abcdef?", result.Diagnostics[0].Hint);
    }

    [Fact]
    public void Read_TwentyThousandParentheses_GivesOneLimitError()
    {
        string deep = new string('(', 20_000) + "1" + new string(')', 20_000);
        var result = ProgramReader.Read("test.fj", $"task t()\n    work {deep}\nstart t()");
        var error = Assert.Single(result.Diagnostics);
        Assert.Equal(("NT004", true, 2, 210), (error.Code, error.IsLimit, error.Span.Line, error.Span.Column));
    }

    private static void AssertError(string text, string expected, string hint)
    {
        var error = Assert.Single(ProgramReader.Read("test.fj", text).Diagnostics);
        Assert.Equal(expected, $"{error.Span.Line}:{error.Span.Column} {error.Code} {error.What}");
        Assert.Equal(hint, error.Hint);
    }
}
