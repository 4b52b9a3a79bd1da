using System.Globalization;
using System.Text;
using System.Text.Json;
using Rookery.Lessons.Blocks;
using Rookery.Lessons.Site;

namespace Rookery.Lessons.Tests.Checks;

/// <summary>
/// Checks in lessons: fields are checked, the verdict is the checker's, a stranger's algorithm comes to an end,
/// the same inputs give the same.
/// </summary>
public sealed class CheckBlockTests
{
    // Store buffering, example 8-3 of Intel's manual: forbidden under sc, allowed under tso (P. Sewell and others,
    // "x86-TSO", CACM 53(7), 2010).
    private const string StoreBuffering = """
        shared x = 0
        shared y = 0

        operation run_left()
            x = 1
            let a = y
            return a

        operation run_right()
            y = 1
            let b = x
            return b

        scenario "litmus"
            thread left: run_left()
            thread right: run_right()

        exists left.a = 0 and right.b = 0
        """;

    // Two threads that each read and then write what they read plus one: the textbooks' lost update.
    private const string LostUpdate = """
        shared sum = 0

        operation count()
            let old = sum
            sum = old + 1

        operation look()
            let now = sum
            assert now < 2
            return now

        scenario "two"
            thread one: count()
            thread two: count(), look()

        scenario "alone"
            thread one: count()
        """;

    private const string Usual = "algorithm: sb.dq\nmemory: [sc, tso]";

    [Fact]
    public void Numbers_OfACheck_AreForFormulas()
    {
        Built built = Of(
            Usual + "\nname: sb\nexpect: [ sc.verdict = forbidden, tso.verdict = allowed, count.allowed = 1 ]",
            "{= sb.tso.verdict } {= sb.sc.outcomes } {= sb.tso.outcomes } {= tso.steps }");

        Assert.Empty(built.Problems);
        BlockResult result = Assert.Single(built.Results);
        Assert.Equal("It depends on the memory.", result.Answer);
        Assert.Contains(
            "<span class=\"number\">allowed</span> <span class=\"number\">3</span> <span class=\"number\">4</span>",
            built.Page, StringComparison.Ordinal);
    }

    // docs/checker.md lists these five states by hand.
    [Fact]
    public void States_OfTheWorkedExample_AreThoseOfTheDocumentation()
    {
        Built built = Of("""
            text: |
                shared x = 0
                operation set()
                    x = 1
                operation look()
                    let a = x
                    return a
                scenario "both"
                    thread writer: set()
                    thread reader: look()
                observe x
            memory: [sc, tso]
            reduce: off
            expect: [ sc.states = 5, sc.transitions = 4, sc.outcomes = 2, tso.states = 7, tso.transitions = 7 ]
            """);

        Assert.Equal("", built.Said);
    }

    [Fact]
    public void Expectation_ThatFails_IsAMissWithLineAndWords()
    {
        Built built = Of(Usual + "\nexpect: [ tso.verdict = forbidden, states < 3 ]");

        Assert.Equal(2, built.Problems.Length);
        Assert.All(built.Problems, problem => Assert.True(problem.IsMiss));
        Assert.Contains("tso.verdict = allowed", built.Problems[0].Diagnostic.What, StringComparison.Ordinal);
        Assert.Contains("states = ", built.Problems[1].Diagnostic.What, StringComparison.Ordinal);
        Assert.All(built.Problems, problem => Assert.Equal(8, problem.Diagnostic.Span.Line));
    }

    [Theory]
    [InlineData("tso.verdict < allowed", "LS051")]
    [InlineData("tso.verdict = 3", "LS051")]
    [InlineData("verdict = allowed", "LS031")]
    [InlineData("tso.verdict = alowed", "LS031")]
    public void Expectation_ThatSaysNothing_IsRefused(string condition, string code)
    {
        Built built = Of(Usual + $"\nexpect: {condition}");

        Assert.Equal([code], built.Codes);
        Assert.All(built.Problems, problem => Assert.False(problem.IsMiss));
    }

    [Fact]
    public void Witness_OfABrokenAlgorithm_IsFigurePlayerAndWords()
    {
        Built built = Of("""
            algorithm: lost.dq
            scenario: two
            show: [verdicts, witness, outcomes, progress, numbers, algorithm]
            expect: [ verdict = broken, steps <= 5, progress.count = waitFree ]
            """, "{= progress.look }");

        Assert.Equal("", built.Said);
        BlockResult result = Assert.Single(built.Results);
        Assert.Equal("Broken.", result.Answer);
        Assert.Contains("assert", result.Verdict, StringComparison.Ordinal);
        BlockFigure figure = Assert.Single(result.Figures);
        Assert.Contains("reads sum", figure.Description, StringComparison.Ordinal);
        Assert.Contains("1. ", figure.Narration, StringComparison.Ordinal);
        Assert.Equal(4, result.Tables.Length);
        Assert.NotNull(result.Player);
        using var wide = JsonDocument.Parse(result.Player.Wide);
        Assert.Equal(result.Player.All + 1, wide.RootElement.GetProperty("frames").GetArrayLength());
        Assert.Contains("step of one", result.Player.Talk, StringComparison.Ordinal);
        Assert.Contains("wait-free", built.Page, StringComparison.Ordinal);
        Assert.Contains(built.Files, file => file.Path == "figures/lesson/check-1-witness.pdf");
        DeckSlide slide = Assert.Single(built.Files.OfType<DeckFile>().Single().Slides);
        Assert.Contains("Computed: lost.dq", slide.Notes, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_OfAllScenarios_HasARowForEach()
    {
        Built built = Of("algorithm: [lost.dq, sb.dq]\nexpect: [ count.holds = 1, count.broken = 1 ]");

        Assert.Equal("", built.Said);
        BlockTable table = Assert.Single(built.Results[0].Tables);
        Assert.Equal(["lost: two", "lost: alone", "sb"], table.Rows.Select(row => row[0]));
    }

    [Theory]
    [InlineData("algorithm: sb.dq", "algorithm: sd.dq", "sb.dq")]
    [InlineData("memory: [sc, tso]", "memory: [sc, tos]", "tso")]
    [InlineData("memory: [sc, tso]", "memroy: sc", "memory")]
    [InlineData("memory: [sc, tso]", "scenario: litmsu", "litmus")]
    [InlineData("memory: [sc, tso]", "show: witnes", "witness")]
    [InlineData("memory: [sc, tso]", "states: 3000000", "2000000")]
    [InlineData("memory: [sc, tso]", "name: states", "states")]
    [InlineData("algorithm: sb.dq", "algorithm: ../sb.dq", "folder")]
    [InlineData("algorithm: sb.dq", "caption: none", "algorithm")]
    [InlineData("algorithm: sb.dq", "algorithm: wrong.dq", "wrong.dq")]
    public void Field_Wrong_IsRefusedAndTheRightWordSaid(string right, string wrong, string meant)
    {
        Built built = Of(Usual.Replace(right, wrong, StringComparison.Ordinal));

        Assert.NotEmpty(built.Problems);
        Assert.All(built.Problems, problem => Assert.False(problem.IsMiss));
        Assert.Contains(built.Problems, problem =>
            (problem.Diagnostic.What + problem.Diagnostic.Hint).Contains(meant, StringComparison.Ordinal));
    }

    [Fact]
    public void Algorithm_TooLarge_EndsAsALimitAndSaysWhatToShrink()
    {
        Built built = Of("algorithm: huge.dq\nmemory: [pso, sc]\nstates: 20000");

        Problem problem = Assert.Single(built.Problems);
        Assert.True(problem.Diagnostic.IsLimit);
        Assert.Contains("20,000 states", problem.Diagnostic.What, StringComparison.Ordinal);
        Assert.Contains("fewer threads", problem.Diagnostic.Hint, StringComparison.Ordinal);
    }

    [Fact]
    public void Algorithm_TooLarge_IsShownWhereTheLessonExpectsIt()
    {
        Built built = Of("algorithm: huge.dq\nmemory: pso\nstates: 20000\nexpect: verdict = outOfBudget");

        Assert.Equal("", built.Said);
        Assert.Equal("No answer.", built.Results[0].Answer);
        Assert.Contains("fewer threads", built.Page, StringComparison.Ordinal);
    }

    [Fact]
    public void Algorithm_ThatLoopsForEver_ComesToAnEnd()
    {
        Built built = Of("""
            text: |
                shared x = 0
                operation spin()
                    while x = x * 0
                        let a = 0
                scenario "for ever"
                    thread one: spin()
                    thread two: spin()
            memory: [sc, tso, pso, ra]
            show: [progress]
            states: 50000
            """);

        Assert.All(built.Problems, problem => Assert.NotEqual("", problem.Diagnostic.What));
    }

    [Fact]
    public void Search_ThatIsStopped_Stops()
    {
        var read = LessonReader.Read("lesson.md", Built.Lesson("```check\nalgorithm: huge.dq\nmemory: pso\n```"));

        Assert.Throws<OperationCanceledException>(() =>
            read.Value!.Blocks[0].Compute(Files(), _ => throw new OperationCanceledException()));
    }

    [Fact]
    public void Names_OfAHostileAlgorithm_AreEscapedInThePage()
    {
        Built built = Of("""
            text: |
                shared x = 0
                operation a()
                    assert x = 1
                scenario "<script>alert(1)</script>"
                    thread one: a()
                scenario "' onload=alert(2) {= states }"
                    thread one: a()
            show: [verdicts, witness, outcomes, progress, numbers, algorithm]
            """);

        Assert.Equal("", built.Said);
        Assert.DoesNotContain("<script>alert", built.Page, StringComparison.Ordinal);
        Assert.All(built.Files.OfType<TextFile>(), file =>
            Assert.DoesNotContain("<script>alert", file.Text, StringComparison.Ordinal));
    }

    [Fact]
    public void Check_ComputedTwice_IsTheSameToTheByte()
    {
        const string fields = "algorithm: [lost.dq, sb.dq]\nmemory: [sc, tso, pso, ra]\n"
            + "show: [verdicts, witness, outcomes]";
        Built once = Of(fields), again = Of(fields);

        Assert.Equal("", once.Said);
        Assert.Equal(
            once.Files.OfType<TextFile>().Select(file => (file.Path, file.Text)),
            again.Files.OfType<TextFile>().Select(file => (file.Path, file.Text)));
    }

    [Fact]
    public void Key_ChangesWithTheAlgorithmAndEachField()
    {
        string[] fields =
        [
            Usual, Usual + "\nbuffer: 1", Usual + "\nreduce: off", Usual + "\nstates: 7", Usual + "\nplayer: off",
            Usual + "\nshow: outcomes", "algorithm: sb.dq\nmemory: [tso, sc]", "algorithm: lost.dq\nmemory: [sc, tso]",
        ];
        string[] keys =
        [
            .. fields.Select(one => KeyOf(one, Files())), KeyOf(Usual, Files().Put("sb.dq", StoreBuffering + "\n#")),
        ];

        Assert.Equal(keys.Length, keys.Distinct().Count());
    }

    private static string KeyOf(string fields, MemoryFiles files) =>
        LessonReader.Read("lesson.md", Built.Lesson($"```check\n{fields}\n```")).Value!.Blocks[0].KeyOf(files);

    private static MemoryFiles Files()
    {
        var huge = new StringBuilder("shared x[8]\noperation w(i)\n").Append(
            "    x[i] = i\n    let a = x[(i + 1) % 8]\n    return a\n");
        huge.Append("scenario \"all\"\n");
        for (int thread = 0; thread < 8; thread++)
        {
            huge.Append(
                CultureInfo.InvariantCulture,
                $"    thread t{thread}: w({thread}), w({(thread + 3) % 8}), w({(thread + 5) % 8})\n");
        }

        return new MemoryFiles().Put("sb.dq", StoreBuffering).Put("lost.dq", LostUpdate)
            .Put("huge.dq", huge.ToString()).Put("wrong.dq", "shared x\noperation a()\n    x = y\n");
    }

    private static Built Of(string fields, string after = "") => Built.Of(
        Built.Lesson($"```check\n{fields.ReplaceLineEndings("\n")}\n```\n\n{after}"), Files());
}
