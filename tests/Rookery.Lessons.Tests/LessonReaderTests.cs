namespace Rookery.Lessons.Tests;

/// <summary>Front matter, fields, and what is said of each that is wrong.</summary>
public sealed class LessonReaderTests
{
    [Fact]
    public void FrontMatter_AllFields_AreRead()
    {
        var lesson = LessonReader.Read(
            "a.md",
            "---\ntitle: Steals\naudience: second year\nminutes: 20\nsummary: Who takes what.\n"
            + "objectives: [count steals, explain them]\n---\n\nText.\n").OrThrow();

        Assert.Equal("Steals", lesson.Front.Title);
        Assert.Equal("second year", lesson.Front.Audience);
        Assert.Equal(20, lesson.Front.Minutes);
        Assert.Equal("Who takes what.", lesson.Front.Summary);
        Assert.Equal(["count steals", "explain them"], lesson.Front.Objectives);
    }

    [Theory]
    [InlineData("Text only.", "LS002", 1, 1)]
    [InlineData("---\ntitle: A\n", "LS003", 1, 1)]
    [InlineData("---\naudience: A\n---\n", "LS009", 2, 1)]
    [InlineData("---\ntitle: A\nminuets: 20\n---\n", "LS007", 3, 1)]
    [InlineData("---\ntitle: A\nminutes: 0\n---\n", "LS012", 3, 10)]
    [InlineData("---\ntitle: A\nminutes: soon\n---\n", "LS012", 3, 10)]
    [InlineData("---\ntitle: [A, B]\n---\n", "LS010", 2, 8)]
    [InlineData("---\ntitle: A\ntitle: B\n---\n", "LS008", 3, 1)]
    [InlineData("---\ntitle: 'A\n---\n", "LS004", 2, 8)]
    public void FrontMatter_Wrong_SaysWhere(string text, string code, int line, int column)
    {
        var problem = LessonReader.Read("a.md", text).Diagnostics[0];

        Assert.Equal((code, line, column), (problem.Code, problem.Span.Line, problem.Span.Column));
    }

    [Theory]
    [InlineData("workers: 4", "LS009", "program")]
    [InlineData("program: count.fj\nworkrs: 4", "LS007", "Did you mean workers?")]
    [InlineData("program: count.fj\nworkers: 0", "LS012", "from 1 to")]
    [InlineData("program: count.fj\nworkers: 5000", "LS043", "at most 4096")]
    [InlineData("program: count.fj\nworkers: [4]", "LS010", "a text")]
    [InlineData("program: count.fj\nscheduler: work-stealin", "LS011", "Did you mean work-stealing?")]
    [InlineData("program: count.fj\nscheduler: { victm: lowest }", "LS007", "Did you mean victim?")]
    [InlineData("program: count.fj\nscheduler: { victim: lowst }", "LS011", "Did you mean lowest?")]
    [InlineData("program: count.fj\nscheduler: { patience: none }", "SM003", "whole number")]
    [InlineData("program: count.fj\nscheduler: { base: shared-queue, victim: lowest }", "SM004", "no victim")]
    [InlineData("program: count.fj\nscheduler: [a]", "LS010", "a name or options")]
    [InlineData("program: count.fj\nmachine: untit", "LS011", "Did you mean unit?")]
    [InlineData("program: count.fj\nmachine: { wak: 5 }", "LS007", "Did you mean wake?")]
    [InlineData("program: count.fj\nmachine: { wake: -5 }", "LS012", "from 0")]
    [InlineData("program: count.fj\nmachine: { probe: 0 }", "LS012", "from 1")]
    [InlineData("program: count.fj\nset: 5", "LS010", "fields with values")]
    [InlineData("program: count.fj\nset: { grain: x }", "LS012", "grain")]
    [InlineData("program: count.fj\nshow: [deqes]", "LS011", "Did you mean deques?")]
    [InlineData("program: count.fj\nsteps: 9", "LS044", "100..400")]
    [InlineData("program: count.fj\nplayer: maybe", "LS011", "on, off")]
    [InlineData("program: count.fj\nname: 4a", "LS021", "letter")]
    [InlineData("program: count.fj\nname: steals", "LS022", "name of a measure")]
    [InlineData("program: count.fj\nexpect: steals <", "LS030", "breaks off")]
    [InlineData("program: count.fj\nexpect: steals ~ 4", "LS030", "'~'")]
    [InlineData("program: count.fj\nseed: 1.5", "LS012", "seed")]
    [InlineData("program: ../count.fj", "LS013", "folder")]
    [InlineData("program: /etc/passwd", "LS013", "folder")]
    [InlineData("program: C:\\count.fj", "LS013", "folder")]
    [InlineData("program: a//b.fj", "LS013", "folder")]
    [InlineData("program: &a count.fj", "LS005", "Anchors")]
    [InlineData("program: !x count.fj", "LS005", "Tags")]
    [InlineData("- program", "LS004", "fields are expected")]
    [InlineData("program: count.fj\n--- \nprogram: b", "LS004", "second document")]
    public void Exhibit_WrongField_SaysWhatIsExpected(string fields, string code, string said)
    {
        Built built = Built.Of(Built.Exhibit(fields));

        Assert.Contains(code, built.Codes);
        Assert.Contains(said, built.Said, StringComparison.Ordinal);
        Assert.All(built.Problems, problem => Assert.InRange(problem.Diagnostic.Span.Line, 5, 9));
    }

    [Fact]
    public void Exhibit_WrongWord_PointsAtItInTheLesson()
    {
        Built built = Built.Of(Built.Exhibit("program: count.fj\nscheduler: { victim: lowst }"));

        Assert.StartsWith(
            "lesson.md:7:22: error LS011: 'lowst' is no value of 'victim'.\n"
            + "    7 | scheduler: { victim: lowst }\n"
            + "      |                      ^^^^^\n",
            built.Said, StringComparison.Ordinal);
    }

    [Fact]
    public void Exhibit_SeveralThingsWrong_AllAreSaid()
    {
        Built built = Built.Of(Built.Exhibit("prgram: count.fj\nworkers: none\nshow: tre"));

        Assert.Equal(["LS009", "LS007", "LS012", "LS011"], built.Codes);
    }

    [Fact]
    public void Block_NearlyOneOfOurs_IsNoCode()
    {
        Built built = Built.Of(Built.Lesson("```exhibt\nprogram: count.fj\n```"));

        Assert.Contains("LS017", built.Codes);
        Assert.Empty(Built.Of(Built.Lesson("```python\nprint(1)\n```")).Problems);
    }

    [Fact]
    public void Exhibit_InListAndQuote_IsFound()
    {
        Built built = Built.Of(
            Built.Lesson(
            "- one\n\n  ```exhibit\n  program: count.fj\n  ```\n\n> ```exhibit\n> program: count.fj\n> ```"));

        Assert.Empty(built.Problems);
        Assert.Equal(2, built.Results.Length);
    }

    [Fact]
    public void Names_Twice_AreRefused()
    {
        Built built = Built.Of(Built.Exhibit(
            "program: count.fj\nname: a", "```exhibit\nprogram: count.fj\nname: a\n```"));

        Assert.Equal(["LS022"], built.Codes);
    }

    [Fact]
    public void AnyText_IsReadOrRefused_AndNeverThrows() =>
        Gen.OneOf(
                Gen.Const("---\ntitle: A\n---\n"), Gen.Const("```exhibit\n"), Gen.Const("```\n"),
                    Gen.Const("{= steals }"),
                Gen.Const("program: count.fj\n"), Gen.Const("expect: [ steals < "), Gen.Const("<div>"),
                    Gen.Const("> - "),
                Gen.Const("![a](b.png)"), Gen.Const("{= "), Gen.String)
            .Array[0, 12].Select(string.Concat)
            .Sample(text => Assert.NotNull(LessonReader.Read("a.md", text)), iter: 2_000);
}
