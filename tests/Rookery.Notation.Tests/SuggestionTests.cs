namespace Rookery.Notation.Tests;

public sealed class SuggestionTests
{
    private static readonly string[] Words = ["work", "fork", "call", "join", "let"];

    [Theory]
    [InlineData("jion", "join")]
    [InlineData("forkk", "fork")]
    [InlineData("cal", "call")]
    [InlineData("wrok", "work")]
    [InlineData("banana", null)]
    [InlineData("x", null)]
    public void Nearest_Misspelling_FindsTheWordOrNone(string word, string? expected) =>
        Assert.Equal(expected, Suggestion.Nearest(word, Words));

    [Fact]
    public void Nearest_MegabyteWord_IsNotLookedAt() =>
        Assert.Null(Suggestion.Nearest(new string('x', 1_000_000), Words));
}
