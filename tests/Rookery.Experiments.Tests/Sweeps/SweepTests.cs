using Rookery.Notation;
using Rookery.Simulation;
using Rookery.Traces.Measuring;

namespace Rookery.Experiments.Tests.Sweeps;

public sealed class SweepTests
{
    private static readonly Subject Halves = Subjects.Of();

    [Fact]
    public void Of_TwoFactors_HasEveryCombinationTheLastVaryingFastest()
    {
        var sweep = Sweep.Of(
            Halves, Setup.Plain, [Factor.Parse("workers=1,2", []), Factor.Parse("grain=4,8,16", ["grain"])], 5);
        Assert.Equal(30, sweep.CellCount);
        Assert.Equal("workers 1, grain 8", sweep.Treatments[1].Label);
        Assert.Equal("set.grain=16 workers=2", sweep.Treatments[5].Setup.ToString());
    }

    [Fact]
    public void CellAt_Cells_GoSeedBySeed()
    {
        var sweep = Sweep.Of(Halves, Setup.Plain.With("seed", "7"), [Factor.Parse("workers=1,2", [])], 3);
        Assert.Equal([7, 7, 8, 8, 9, 9], Enumerable.Range(0, 6).Select(c => sweep.CellAt(c).Seed));
        Assert.Equal([0, 1, 0, 1, 0, 1], Enumerable.Range(0, 6).Select(c => sweep.CellAt(c).Treatment.Index));
    }

    [Fact]
    public void Run_AnyCellTwice_IsTheSame()
    {
        var sweep = Sweep.Of(Halves, Setup.Plain.With("machine", "unit"), [Factor.Parse("victim=random,lowest", [])],
            4);
        CellResult[] cells = Subjects.Audited(sweep);
        Assert.All(cells, cell => Assert.Equal(cell.Values, sweep.Run(cell.Cell).Values));
    }

    [Fact]
    public void Run_IdealMachineOneWorker_TakesTheWork()
    {
        var sweep = Sweep.Of(Halves, Setup.Plain, [Factor.Parse("workers=1,4", [])], 1);
        CellResult one = Subjects.Audited(sweep)[0];
        Assert.Equal(
            Measure(one, "work").ToDouble(), Measure(one, "makespan").ToDouble());
    }

    [Fact]
    public void Of_SenselessCombination_NamesIt()
    {
        var error = Assert.Throws<InputException>(() => Sweep.Of(
            Halves, Setup.Plain, [Factor.Parse("queues=per-worker,shared", []), Factor.Parse("victim=lowest", [])], 1));
        Assert.Contains("queues shared, victim lowest", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_TooManyCells_IsALimit()
    {
        var error = Assert.Throws<InputException>(
            () => Sweep.Of(Halves, Setup.Plain, [Factor.Parse("workers=1..1000", [])], 1_001));
        Assert.True(error.IsLimit);
    }

    [Fact]
    public void Run_ParameterOutOfItsRange_NamesTreatmentAndSeed()
    {
        var sweep = Sweep.Of(Halves, Setup.Plain, [Factor.Parse("grain=1,100", ["grain"])], 1);
        var error = Assert.Throws<InputException>(() => sweep.Run(1));
        Assert.Contains("grain 100", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_StarvedCell_HasNoMakespanButItsSteals()
    {
        const string text = """
            task t(n)
                if n > 0
                    fork t(n - 1)
                    join
                work 1
            start t(9)
            """;
        var sweep = Sweep.Of(Subjects.Of(text), Setup.Plain.With("scheduler", "shared-queue"),
            [Factor.Parse("workers=2,20", [])], 1);
        CellResult starved = sweep.Run(0);
        Assert.True(starved.IsStarved);
        Assert.False(Measure(starved, "makespan").HasValue);
        Assert.True(Measure(starved, "tasks").HasValue);
        Assert.False(sweep.Run(1).IsStarved);
    }

    [Fact]
    public void Identity_AnythingThatMatters_ChangesIt()
    {
        string[] ids =
        [
            Of(Halves, "workers=1,2", 3, "seed=1"), Of(Halves, "workers=1,3", 3, "seed=1"),
            Of(Halves, "workers=1,2", 4, "seed=1"), Of(Halves, "workers=1,2", 3, "seed=2"),
            Of(Halves, "workers=1,2", 3, "machine=unit"),
            Of(Subjects.Of(Subjects.Halves + "\n# changed"), "workers=1,2", 3, "seed=1"),
        ];
        Assert.Equal(ids.Length, ids.Distinct().Count());
        Assert.Equal(ids[0], Of(Halves, "workers=1,2", 3, "seed=1"));
    }

    private static string Of(Subject subject, string factor, int seeds, string setup) =>
        Sweep.Of(subject, Setup.Read(setup), [Factor.Parse(factor, [])], seeds).Identity();

    private static Ratio Measure(CellResult cell, string name) =>
        cell.Values[MeasureNames.All.IndexOf(MeasureNames.Find(name)!)];
}
