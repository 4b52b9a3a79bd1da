using Microsoft.Coyote.Specifications;
using Rookery.Pool.Deques;
using Rookery.Pool.Tests.Deques;

namespace Rookery.Pool.Tests.Runs;

/// <summary>
/// The whole pool under a systematic testing library's scheduler: its workers fork, steal, fall asleep, are woken and
/// end, with a choice before each access to a deque and around each step of falling asleep.
/// </summary>
/// <remarks>
/// A lost wake-up leaves all threads waiting, which the library reports as a deadlock. Sequentially consistent
/// schedules, as in <see cref="DequeInterleavings"/>.
/// </remarks>
public sealed class PoolInterleavings
{
    private const uint Seed = 20_130_223;
    private const uint Schedules = 100;

    public static TheoryData<string, int, string> Kinds =>
    [
        .. Exploration.Strategies.SelectMany(
            _ => new[] { 1, 2, 3 },
            (strategy, workers) => new TheoryDataRow<string, int, string>(strategy, workers, "lock-free")),
        new("random", 2, "thief lock"),
        new("random", 2, "one lock"),
        new("random", 2, "leapfrog"),
    ];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Runs_InEachScheduleOfTheLibrary_EndWithTheirResult(string strategy, int workers, string kind)
    {
        int sleeps = 0;
        int byOthers = 0;
        Exploration explored = Exploration.Of(strategy, Seed, Schedules, () =>
        {
            var seam = new ControlledPool();
            byOthers += Use(seam, workers, kind);
            sleeps += seam.Sleeps;
        });
        Assert.True(explored.Failure is null, explored.ToString());
        Assert.Equal(Schedules, explored.Schedules);

        // Or there was nothing to get wrong.
        Assert.True(sleeps > 0);
        Assert.Equal(workers > 1, byOthers > 0);
    }

    // A pool that loses a wake-up has to be found, or the test above would prove nothing.
    [Theory]
    [InlineData("signal is not kept", 2)]
    [InlineData("no last look", 1)]
    [InlineData("no last look", 2)]
    public void Mistake_OfSleepers_IsFoundAsADeadlock(string mistake, int workers)
    {
        SleepMistake made = mistake == "no last look" ? SleepMistake.NoLastLook : SleepMistake.SignalIsNotKept;
        void Scenario() => Use(new ControlledPool(made), workers, "lock-free");
        Exploration explored = Exploration.Of("random", Seed, 2000, Scenario);
        TestContext.Current.TestOutputHelper?.WriteLine($"{mistake}: {explored}");
        Assert.StartsWith("Deadlock detected", explored.Failure, StringComparison.Ordinal);
        Assert.StartsWith("Deadlock detected", Exploration.Again(explored, Scenario).Failure, StringComparison.Ordinal);
    }

    // Two runs, so that workers are asleep when the second one comes; how many calls were not of the first's worker.
    private static int Use(ControlledPool seam, int workers, string kind)
    {
        var options = new PoolOptions { Workers = workers, Patience = 1, StackBytes = 1 << 20 };
        if (kind == "leapfrog")
            options = options with { AtJoin = AtJoin.Leapfrog };
        using var pool = new WorkerPool(options, seam, () => kind switch
        {
            "thief lock" => new ThiefLockDeque<ControlledSteps>(2),
            "one lock" => new OneLockDeque<ControlledSteps>(OwnerTakes.Newest, ThiefTakes.Oldest, 2),
            _ => new LockFreeDeque<ControlledSteps>(FencePlacement.Owner, 2),
        });
        int byOthers = 0;
        for (int run = 0; run < 2; run++)
        {
            int[] calls = new int[workers];
            int first = pool.Run<(int, int[]), int>(Count, (4, calls));
            Specification.Assert(calls.Sum() == 9, "fib(4) has 9 calls, and {0} were made", calls.Sum());
            byOthers += 9 - calls[first];
        }

        return byOthers;
    }

    // The calls of fib(n) by worker; the worker that ran this one.
    private static int Count(Worker worker, (int N, int[] Calls) state)
    {
        int by = worker.Number;
        Interlocked.Increment(ref state.Calls[by]);
        if (state.N < 2)
            return by;
        var left = worker.Fork(Count, (state.N - 1, state.Calls));
        Count(worker, (state.N - 2, state.Calls));
        worker.Join(left);
        return by;
    }
}
