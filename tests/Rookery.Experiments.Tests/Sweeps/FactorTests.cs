using Rookery.Notation;

namespace Rookery.Experiments.Tests.Sweeps;

public sealed class FactorTests
{
    [Theory]
    [InlineData("workers=1..4", "workers", "1 2 3 4")]
    [InlineData("workers=1..8*2,12", "workers", "1 2 4 8 12")]
    [InlineData("grain=0..100+50", "set.grain", "0 50 100")]
    [InlineData("grain=-2..1", "set.grain", "-2 -1 0 1")]
    [InlineData("set.grain=7", "set.grain", "7")]
    [InlineData("steal=0,50", "cost.steal", "0 50")]
    [InlineData("victim=random,lowest", "victim", "random lowest")]
    [InlineData("scheduler=greedy", "scheduler", "greedy")]
    [InlineData("workers=1..63*2", "workers", "1 2 4 8 16 32")]
    public void Parse_Levels_AreExpandedInOrder(string text, string name, string levels)
    {
        var factor = Factor.Parse(text, ["grain"]);
        Assert.Equal(name, factor.Name);
        Assert.Equal(levels.Split(' '), factor.Levels);
    }

    [Theory]
    [InlineData("victim", "does not say what to vary")]
    [InlineData("victim=", "does not say what to vary")]
    [InlineData("victm=random", "victm")]
    [InlineData("victim=rondom", "rondom")]
    [InlineData("workers=0", "workers")]
    [InlineData("workers=4..1", "no range")]
    [InlineData("workers=0..8*2", "no range")]
    [InlineData("workers=1..8*1", "no range")]
    [InlineData("workers=1..100000", "levels")]
    [InlineData("workers=1,1", "twice")]
    [InlineData("seed=1..3", "seed")]
    [InlineData("workers=1..9999999999999999999", "no range")]
    public void Parse_Wrong_SaysWhatIsWrong(string text, string expected)
    {
        var error = Assert.Throws<InputException>(() => Factor.Parse(text, ["grain"]));
        Assert.Contains(expected, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Parse_RangeAtTheEndOfNumbers_Ends() =>
        Assert.Equal(
            [long.MaxValue.ToString(System.Globalization.CultureInfo.InvariantCulture)],
            Factor.Parse("grain=9223372036854775807..9223372036854775807", ["grain"]).Levels);
}
