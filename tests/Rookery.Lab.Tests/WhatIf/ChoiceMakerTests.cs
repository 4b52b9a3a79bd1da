using Rookery.Lab.Session;
using Rookery.Lab.Tests.Support;
using Rookery.Lab.WhatIf;
using Rookery.Simulation;

namespace Rookery.Lab.Tests.WhatIf;

public sealed class ChoiceMakerTests
{
    private static readonly Inputs s_plain = Made.Inputs("seabird/count.fj");

    [Fact]
    public void Make_WhatMakesNoSenseTogether_SaysWhyAndChangesNothing()
    {
        var lowest = ChoiceMaker.Make(s_plain, s_plain, "victim", "lowest").OrThrow();
        var shared = ChoiceMaker.Make(lowest, s_plain, "queues", "shared");
        Assert.False(shared.IsValid);
        Assert.Equal("SM004", Assert.Single(shared.Diagnostics).Code);
    }

    [Theory]
    [InlineData("set.grain", "0")]
    [InlineData("set.grain", "1001")]
    [InlineData("workers", "0")]
    [InlineData("workers", "two")]
    [InlineData("cost.probe", "0")]
    [InlineData("patience", "0")]
    [InlineData("victim", "nobody")]
    public void Make_AWrongValue_IsRefusedWithAReason(string name, string word)
    {
        var made = ChoiceMaker.Make(s_plain, s_plain, name, word);
        Assert.False(made.IsValid);
        Assert.NotEmpty(made.Diagnostics[0].What);
    }

    [Fact]
    public void Make_WhatHoldsAnyway_IsNoChoice()
    {
        Assert.Equal(s_plain, ChoiceMaker.Make(s_plain, s_plain, "victim", "random").OrThrow());
        var first = ChoiceMaker.Make(s_plain, s_plain, "scheduler", "work-first").OrThrow();
        Assert.Equal(first, ChoiceMaker.Make(first, s_plain, "at-join", "suspend").OrThrow());
        Assert.Contains("at-join", ChoiceMaker.Make(first, s_plain, "at-join", "help").OrThrow().Setup.Choices.Keys);
    }

    [Fact]
    public void Make_Nothing_TakesBackToWhatWasOpened()
    {
        var opened = Made.Inputs("seabird/count.fj", "workers=8 victim=nearest");
        var now = Made.Inputs("seabird/count.fj", "workers=2 seed=5");
        now = ChoiceMaker.Make(now, opened, "workers", "").OrThrow();
        now = ChoiceMaker.Make(now, opened, "seed", "").OrThrow();
        now = ChoiceMaker.Make(now, opened, "victim", "").OrThrow();
        Assert.Equal(opened.Setup, now.Setup);
    }

    // Every pair of option values: a refused one is mended by what makes sense and keeps what was asked for, or not
    // at all.
    [Fact]
    public void Mend_AnyRefusedPair_MakesSenseAndKeepsTheWish()
    {
        int refused = 0;
        int mended = 0;
        foreach (string first in Scheduler.OptionNames)
        {
            foreach (string word in Scheduler.WordsOf(first))
            {
                var before = s_plain with { Setup = Setup.Plain.With(first, word) };
                foreach (string second in Scheduler.OptionNames.Where(option => option != first))
                {
                    foreach (string wish in Scheduler.WordsOf(second))
                    {
                        if (ChoiceMaker.Make(before, s_plain, second, wish).IsValid)
                            continue;
                        refused++;
                        if (ChoiceMaker.Mend(before, second, wish) is not { } found)
                            continue;
                        mended++;
                        found.Setup.ToSettings();
                        Assert.Equal(wish, Choices.ValueOf(found.Setup, second, []));
                    }
                }
            }
        }

        Assert.True(refused > 50);
        Assert.Equal(refused, mended);
    }

    [Fact]
    public void Mend_QueuesNone_OffersToBlockAtJoins()
    {
        var found = ChoiceMaker.Mend(s_plain, "queues", "none");
        Assert.NotNull(found);
        Assert.Equal([("at-join", "wait")], ChoiceMaker.Differences(s_plain, found, "queues"));
    }
}
