using System.Globalization;
using Rookery.Lab.Tests.Support;
using Rookery.Lab.Texts;
using Rookery.Lab.WhatIf;
using Rookery.Simulation;

namespace Rookery.Lab.Tests.WhatIf;

public sealed class ChoicesTests
{
    [Fact]
    public void Of_ADemoProgram_HasEveryChoiceOfARunWithWhatHolds()
    {
        var inputs = Made.Inputs("seabird/count.fj", "workers=6 scheduler=work-first victim=lowest machine=unit");
        var choices = Choices.Of(inputs, inputs);
        Assert.Equal([.. Setup.Names, "set.grain"], choices.Select(choice => choice.Name));
        Assert.Equal("6", Value("workers"));
        Assert.Equal("6", Value("cores"));
        Assert.Equal("child", Value("fork-runs"));
        Assert.Equal("suspend", Value("at-join"));
        Assert.Equal("lowest", Value("victim"));
        Assert.Equal("12", Value("patience"));
        Assert.Equal("1", Value("cost.steal"));
        Assert.Equal("25", Value("set.grain"));
        Assert.DoesNotContain(choices, choice => choice.IsChanged);

        string Value(string name) => choices.Single(choice => choice.Name == name).Value;
    }

    [Fact]
    public void Of_ChangedInputs_MarksWhatWasChosenAndNotWhatFollows()
    {
        var opened = Made.Inputs("seabird/count.fj", "workers=2");
        var now = Made.Inputs("seabird/count.fj", "workers=8 machine=typical set.grain=50");
        Assert.Equal(
            ["workers", "machine", "set.grain"],
            Choices.Of(now, opened).Where(choice => choice.IsChanged).Select(choice => choice.Name));
    }

    // What holds is what the engine is given: compared with the trace's own account of its inputs.
    [Theory]
    [InlineData("")]
    [InlineData("scheduler=work-first workers=3 machine=typical cost.steal=500")]
    [InlineData("queues=shared at-join=suspend when-idle=sleep patience=3 wake=all cores=2")]
    [InlineData("victim=fullest amount=half thief-takes=newest set.grain=100 seed=-7")]
    public async Task Of_AnyInputs_SaysWhatTheRunIsMadeFrom(string chosen)
    {
        var run = await Made.RunAsync("seabird/count.fj", chosen);
        var inputs = run.Trace.Inputs;
        foreach (var choice in Choices.Of(run.Inputs!, run.Inputs!))
        {
            if (inputs.Scheduler.TryGetValue(choice.Name, out string? word))
                Assert.Equal(word, choice.Value);
            if (choice.Name.StartsWith("cost.", StringComparison.Ordinal))
                Assert.Equal(inputs.Cost(choice.Word).ToString(CultureInfo.InvariantCulture), choice.Value);
            if (choice.Group == ChoiceGroup.Program)
                Assert.Equal(inputs.Parameters[choice.Word].ToString(CultureInfo.InvariantCulture), choice.Value);
        }
    }

    [Fact]
    public void Texts_OfEveryChoiceAndOfEveryValue_AreThereInAllLanguages()
    {
        var inputs = Made.Inputs("seabird/count.fj");
        foreach (var (code, _) in LabTexts.Languages)
        {
            var texts = new LabTexts();
            texts.Choose(code);
            foreach (var choice in Choices.Of(inputs, inputs).Where(choice => choice.Group != ChoiceGroup.Program))
            {
                Assert.NotEmpty(texts["whatif.hint." + choice.Name]);
                foreach (string word in choice.Words)
                    Assert.NotEmpty(texts[$"whatif.{choice.Name}.{word}"]);
            }
        }
    }
}
