using Rookery.Lessons.Blocks;
using Rookery.Lessons.Site;

namespace Rookery.Lessons.Tests.Claims;

/// <summary>
/// Claims in lessons: fields are checked, the verdict is the experiment's, the same inputs give the same.
/// </summary>
public sealed class ClaimBlockTests
{
    private const string Usual = """
        says: Eight workers are quicker than one.
        program: count.fj
        choices: { machine: unit }
        first: { label: one, workers: 1 }
        second: { label: eight, workers: 8 }
        measure: makespan
        claim: lower
        least: 20%
        seeds: 10
        """;

    [Fact]
    public void Numbers_OfAClaim_AreForFormulas()
    {
        Built built = Of(Usual + "\nname: quick\nverdict: supported\nexpect: [ second.mean < first.mean ]",
            "{= quick.supported } {= quick.refuted } {= quick.undecided }");

        Assert.Empty(built.Problems);
        BlockResult result = Assert.Single(built.Results);
        Assert.Equal(
            [
                "difference", "difference.high", "difference.low", "first.mean", "refuted", "second.mean", "share",
                "share.high", "share.low", "supported", "undecided",
            ],
            result.Measures.Select(measure => measure.Name).Order(StringComparer.Ordinal));
        Assert.Equal("Supported.", result.Answer);
        Assert.Contains(
            "<span class=\"number\">1</span> <span class=\"number\">0</span> <span class=\"number\">0</span>",
            built.Page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("measure: makespan", "measure: makespam", "makespan")]
    [InlineData("claim: lower", "claim: lowre", "lower")]
    [InlineData("least: 20%", "leest: 20%", "least")]
    [InlineData("choices: { machine: unit }", "choices: { machine: unti }", "unit")]
    [InlineData("workers: 8", "victim: randon", "random")]
    [InlineData("seeds: 10", "seeds: 10\nverdict: suported", "supported")]
    [InlineData("program: count.fj", "program: cuont.fj", "count.fj")]
    public void Field_Misspelt_IsRefusedAndTheRightWordSaid(string right, string wrong, string meant)
    {
        Built built = Of(Usual.Replace(right, wrong, StringComparison.Ordinal));

        Assert.NotEmpty(built.Problems);
        Assert.All(built.Problems, problem => Assert.False(problem.IsMiss));
        Assert.Contains(built.Problems, problem =>
            (problem.Diagnostic.What + problem.Diagnostic.Hint).Contains(meant, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("seeds: 10", "seeds: 1")]
    [InlineData("seeds: 10", "seeds: 1001")]
    [InlineData("least: 20%", "least: much")]
    [InlineData("least: 20%", "least: 20%\nconfidence: 120%")]
    [InlineData("workers: 8", "workers: 0")]
    [InlineData("workers: 8", "workers: 8, seed: 3")]
    [InlineData("workers: 8", "set.grian: 3")]
    [InlineData("program: count.fj", "program: ../count.fj")]
    [InlineData("claim: lower\nleast: 20%", "claim: same")]
    public void Field_OutOfRange_IsRefused(string right, string wrong)
    {
        string fields = Usual.ReplaceLineEndings("\n");
        Assert.Contains(right, fields, StringComparison.Ordinal);
        Built built = Of(fields.Replace(right, wrong, StringComparison.Ordinal));

        Assert.NotEmpty(built.Problems);
        Assert.All(built.Problems, problem => Assert.False(problem.IsMiss));
    }

    [Theory]
    [InlineData("says")]
    [InlineData("program")]
    [InlineData("measure")]
    [InlineData("claim")]
    public void Field_ThatMustBeThere_IsAskedFor(string field)
    {
        string fields = string.Join('\n', Usual.ReplaceLineEndings("\n").Split('\n')
            .Where(line => !line.StartsWith(field + ":", StringComparison.Ordinal)));

        Built built = Of(fields);

        Assert.Contains(built.Problems, problem =>
            problem.Diagnostic.What.Contains($"'{field}'", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("refuted")]
    [InlineData("undecided")]
    public void Verdict_OtherThanTheExperiments_IsAMiss(string verdict)
    {
        Built built = Of($"{Usual}\nverdict: {verdict}");

        Problem problem = Assert.Single(built.Problems);
        Assert.True(problem.IsMiss);
        Assert.Contains("supported", problem.Diagnostic.What, StringComparison.Ordinal);
        Assert.Equal(15, problem.Diagnostic.Span.Line);
    }

    [Fact]
    public void Claim_OfTheOppositeDirection_IsRefuted()
    {
        Built built = Of(Usual.Replace("claim: lower", "claim: higher", StringComparison.Ordinal)
            + "\nverdict: refuted");

        Assert.Empty(built.Problems);
    }

    // One worker that blocks at a join waits for a task that only it could run: no seed has a makespan.
    [Fact]
    public void Runs_ThatStarve_LeaveTheClaimUndecided()
    {
        Built built = Of(Usual.Replace("workers: 1", "workers: 1, scheduler: shared-queue", StringComparison.Ordinal)
            + "\nverdict: undecided");

        Assert.Empty(built.Problems);
        BlockResult result = Assert.Single(built.Results);
        Assert.Contains("starved", result.Verdict, StringComparison.Ordinal);
    }

    [Fact]
    public void Claim_ComputedTwice_IsTheSameToTheByte()
    {
        Built once = Of(Usual), again = Of(Usual);

        Assert.Empty(once.Problems);
        Assert.Equal(once.Page, again.Page);
        Assert.Equal(
            once.Files.OfType<TextFile>().Select(file => (file.Path, file.Text)),
            again.Files.OfType<TextFile>().Select(file => (file.Path, file.Text)));
    }

    private static Built Of(string fields, string after = "") =>
        Built.Of(Built.Lesson($"```claim\n{fields.ReplaceLineEndings("\n")}\n```\n\n{after}"));
}
