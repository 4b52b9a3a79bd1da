using Rookery.Simulation.Engine;

namespace Rookery.Simulation.Tests.Engine;

/// <summary>The tournament against the plainest search for the least.</summary>
public sealed class NextEventTreeModels
{
    [Fact]
    public void Winner_AnyTimesInAnyOrder_IsTheLowestOfTheEarliest() =>
        Gen.Select(Gen.Int[1, 40], Gen.Select(Gen.Int[0, 39], Gen.Long[0, 20]).Array[1, 60]).Sample((workers, sets) =>
        {
            var tree = new NextEventTree(workers);
            long[] times = new long[workers];
            Array.Fill(times, NextEventTree.Never);
            foreach ((int slot, long time) in sets)
            {
                tree.Set(slot % workers, time);
                times[slot % workers] = time;
                if (Array.IndexOf(times, times.Min()) != tree.Winner)
                    return false;
            }

            return true;
        });

    [Fact]
    public void Grow_MoreWorkers_KeepsTimesAndGivesTheNewOnesNone()
    {
        var tree = new NextEventTree(2);
        tree.Set(1, 5);
        tree.Grow(9);
        Assert.Equal(1, tree.Winner);
        Assert.Equal(NextEventTree.Never, tree.TimeOf(8));
        tree.Set(8, 4);
        Assert.Equal(8, tree.Winner);
    }
}
