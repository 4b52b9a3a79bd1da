using Rookery.Notation;

namespace Rookery.Simulation.Tests;

public sealed class SetupTests
{
    [Fact]
    public void Plain_NothingChosen_IsTheDefaultRun()
    {
        RunSettings settings = Setup.Plain.ToSettings();
        Assert.Equal(new RunSettings(), settings);
        Assert.Equal(1, Setup.Plain.Seed);
        Assert.Empty(Setup.Plain.ToString());
    }

    [Fact]
    public void With_OptionBeforeNamedScheduler_KeepsTheOption()
    {
        Setup setup = Setup.Plain.With("victim", "lowest").With("scheduler", "work-first");
        Assert.Equal(VictimChoice.Lowest, setup.ToSettings().Scheduler.Victim);
        Assert.Equal(ForkRuns.Child, setup.ToSettings().Scheduler.ForkRuns);
    }

    [Fact]
    public void With_CostAndMachineInAnyOrder_IsTheSame() =>
        Assert.Equal(
            Setup.Plain.With("cost.steal", "50").With("machine", "unit"),
            Setup.Plain.With("machine", "unit").With("cost.steal", "50"));

    [Theory]
    [InlineData("")]
    [InlineData("workers=8 seed=-3 machine=unit cost.wake=50 set.grain=25 victim=lowest cores=2")]
    [InlineData("scheduler=work-first machine=typical cost.probe=7")]
    [InlineData("scheduler=greedy patience=3 workers=2")]
    public void Of_SettingsOfASetup_LeadsToTheSameSettings(string text)
    {
        var setup = Setup.Read(text);
        var again = Setup.Of(setup.ToSettings(), setup.Seed, setup.Parameters);
        Assert.Equal(setup.Seed, again.Seed);
        Assert.Equal(setup.Parameters, again.Parameters);
        RunSettings one = setup.ToSettings(), other = again.ToSettings();
        Assert.Equal((one.Workers, one.Cores, one.Machine.TimeUnit),
            (other.Workers, other.Cores, other.Machine.TimeUnit));
        Assert.Equal(one.Scheduler.ToWords(one.Workers), other.Scheduler.ToWords(other.Workers));
        Assert.Equal(one.Machine.ToCosts(), other.Machine.ToCosts());
    }

    [Fact]
    public void Read_WhatToStringWrites_IsEqual()
    {
        var setup = Setup.Read("workers=8 seed=-3 machine=unit cost.wake=50 set.grain=25 victim=lowest cores=2");
        Assert.Equal(setup, Setup.Read(setup.ToString()));
        Assert.Equal(-3, setup.Seed);
        Assert.Equal(25, setup.Parameters["grain"]);
        Assert.Equal(50, setup.ToSettings().Machine.Wake);
        Assert.Equal(2, setup.ToSettings().Cores);
    }

    [Theory]
    [InlineData("workers=0")]
    [InlineData("workers=many")]
    [InlineData("cost.probe=0")]
    [InlineData("cost.stele=1")]
    [InlineData("machine=uint")]
    [InlineData("scheduler=greddy")]
    [InlineData("victm=lowest")]
    [InlineData("victim")]
    [InlineData("=3")]
    public void Read_Wrong_IsRefused(string text) => Assert.Throws<InputException>(() => Setup.Read(text));

    [Fact]
    public void NameOf_ParameterCalledLikeACost_IsTheParameter()
    {
        Assert.Equal("set.steal", Setup.NameOf("steal", ["steal"]));
        Assert.Equal("cost.steal", Setup.NameOf("steal", []));
        Assert.Equal("cost.steal", Setup.NameOf("cost.steal", ["steal"]));
        Assert.Null(Setup.NameOf("nothing", ["steal"]));
    }
}
