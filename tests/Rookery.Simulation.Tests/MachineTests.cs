using Rookery.Notation;
using Rookery.Testing;

namespace Rookery.Simulation.Tests;

/// <summary>Costs by name, and presets that agree with their documentation.</summary>
public sealed class MachineTests
{
    [Fact]
    public void With_EachCostByName_ChangesThatCostAlone()
    {
        foreach (string cost in Machine.CostNames.Where(c => c != "cores"))
        {
            Machine changed = Machine.Unit.With(cost, 77);
            Assert.Equal(77, changed.ToCosts()[cost]);
            Assert.All(
                changed.ToCosts().Where(c => c.Key != cost), c => Assert.Equal(Machine.Unit.ToCosts()[c.Key], c.Value));
        }

        Assert.Equal(3, Machine.Unit.With("cores", 3).Cores);
    }

    [Theory]
    [InlineData("probe", 0)]
    [InlineData("slice", 0)]
    [InlineData("fork", -1)]
    [InlineData("fork", Machine.CostMax + 1)]
    [InlineData("cores", 1L << 40)]
    public void With_ValueOutOfRange_SaysWhatIsPermitted(string cost, long value)
    {
        var error = Assert.Throws<InputException>(() => Machine.Ideal.With(cost, value));
        Assert.Contains(cost, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void With_UnknownCost_ListsTheCosts()
    {
        var error = Assert.Throws<InputException>(() => Machine.Ideal.With("steel", 1));
        Assert.Contains("steal", error.Diagnostics[0].Hint, StringComparison.Ordinal);
    }

    [Fact]
    public void Find_EachPreset_IsFoundByItsName() =>
        Assert.All(Machine.Presets, preset => Assert.Same(preset, Machine.Find(preset.Name)));

    // docs/machine.md names the source of each number; it and the code must not drift apart.
    [Fact]
    public void Presets_Documented_AgreeWithTheTableOfSources()
    {
        string[] rows = File.ReadAllLines(RepositoryFile.At("docs/machine.md"));
        foreach (string cost in Machine.CostNames.Where(c => c != "cores"))
        {
            string row = rows.Single(r => r.StartsWith($"| `{cost}` |", StringComparison.Ordinal));
            string[] cells = [.. row.Split('|').Select(c => c.Trim().Replace(",", "", StringComparison.Ordinal))];
            Assert.Equal(Machine.Ideal.ToCosts()[cost], cells[3] == "10^6" ? 1_000_000 : Number(cells[3]));
            Assert.Equal(Machine.Unit.ToCosts()[cost], Number(cells[4]));
            Assert.Equal(Machine.Typical.ToCosts()[cost], Number(cells[5]));
            Assert.Matches(@"\[\d\]|\*\*assumption\*\*", cells[6]);
        }
    }

    // P. E. McKenney, "Is Parallel Programming Hard, And, If So, What Can You Do About It?", ch. 3, table "CPU 0 view
    // of synchronization mechanisms": same-CPU compare-and-swap 7.0 ns, off-core blind 47.5 ns, off-core 101.9 ns.
    [Fact]
    public void Typical_CostsOfCacheTraffic_AreTheSourcesRoundedToNanoseconds()
    {
        Assert.Equal(Math.Round(7.0), Machine.Typical.Fork);
        Assert.Equal(Math.Round(7.0), Machine.Typical.Take);
        Assert.Equal(Math.Round(47.5), Machine.Typical.Probe);
        Assert.Equal(Math.Round(101.9), Machine.Typical.Steal);
        Assert.Equal(Math.Round(101.9), Machine.Typical.LostRace);
    }

    private static long Number(string text) => long.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
