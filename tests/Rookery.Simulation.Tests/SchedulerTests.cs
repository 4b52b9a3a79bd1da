using Rookery.Notation;

namespace Rookery.Simulation.Tests;

/// <summary>Options by their words, and combinations that make no sense.</summary>
public sealed class SchedulerTests
{
    [Fact]
    public void With_EveryWordOfEveryOption_IsWhatToWordsGivesBack()
    {
        foreach (string option in Scheduler.OptionNames.Where(o => o != "patience"))
        {
            foreach (string word in Scheduler.WordsOf(option))
                Assert.Equal(word, new Scheduler().With(option, word).ToWords(4)[option]);
        }
    }

    [Fact]
    public void WordsOf_FirstWord_IsTheDefault() =>
        Assert.All(
            Scheduler.OptionNames.Where(o => o != "patience"),
            option => Assert.Equal(Scheduler.WordsOf(option)[0], new Scheduler().ToWords(4)[option]));

    [Fact]
    public void PatienceFor_NotSet_IsTwiceTheWorkers()
    {
        Assert.Equal(14, new Scheduler().PatienceFor(7));
        Assert.Equal(3, new Scheduler().With("patience", "3").PatienceFor(7));
    }

    [Theory]
    [InlineData("patience", "0", "at least 1")]
    [InlineData("patience", "two", "two")]
    [InlineData("victim", "radom", "random")]
    [InlineData("victims", "random", "victim")]
    public void With_WrongWord_SaysWhatIsPermitted(string option, string word, string expected)
    {
        var error = Assert.Throws<InputException>(() => new Scheduler().With(option, word));
        Assert.Contains(expected, error.Message + error.Diagnostics[0].Hint, StringComparison.Ordinal);
    }

    [Fact]
    public void Named_EverySet_MakesSense() => Assert.All(Scheduler.Named, n => Assert.Null(n.Scheduler.Refusal()));

    [Theory]
    [InlineData("queues=shared victim=lowest", "shared")]
    [InlineData("queues=shared amount=half", "shared")]
    [InlineData("queues=shared at-join=leapfrog", "leapfrog")]
    [InlineData("queues=none at-join=help", "help")]
    [InlineData("queues=none at-join=wait fork-runs=child", "fork")]
    [InlineData("queues=none at-join=wait when-idle=sleep", "idle")]
    [InlineData("at-join=leapfrog owner-takes=oldest", "leapfrog")]
    public void Refusal_SenselessCombination_GivesTheReason(string options, string expected)
    {
        Scheduler scheduler = options.Split(' ').Select(o => o.Split('=')).Aggregate(
            new Scheduler(), (s, o) => s.With(o[0], o[1]));
        Diagnostic? refusal = scheduler.Refusal();
        Assert.NotNull(refusal);
        Assert.Contains(expected, refusal.What + refusal.Hint, StringComparison.OrdinalIgnoreCase);
    }
}
