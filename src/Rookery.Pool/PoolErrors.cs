using System.Globalization;

namespace Rookery.Pool;

/// <summary>All that can be said about wrong use, in one place.</summary>
internal static class PoolErrors
{
    public static PoolMisuseException JoinedNothing() => new(
        "This join was given no child: a default value, not what a fork returned. Join what worker.Fork(...) returns.");

    public static PoolMisuseException WrongWorker(int forker, int joiner) => new(string.Create(
        CultureInfo.InvariantCulture,
        $"A child that worker {forker} forked was to be joined on worker {joiner}. Only the task that forks a "
            + $"child can join it: join it before the task ends, and pass its result on instead of the child."));

    public static PoolMisuseException JoinedTwice() => new(
        "This child was joined before, or its task has ended. A child is joined once; keep its result for a second "
            + "use.");

    public static PoolMisuseException NeverJoined(int count) => new(string.Create(
        CultureInfo.InvariantCulture,
        $"A task ended with {count} forked {(count == 1 ? "child" : "children")} that it never joined. Join every "
            + $"child before the task returns; its result or its exception would be lost."));

    public static PoolStarvedException Starved(int workers) => new(string.Create(
        CultureInfo.InvariantCulture,
        $"Starved: each of the {workers} workers waits at a join for a task that is still queued, and under "
            + $"at-join wait none may run it. Use more workers than joins that wait at one time, or let workers "
                + $"help at joins."));

    public static void ThrowIfInside(bool isInside)
    {
        if (isInside)
        {
            throw new PoolMisuseException(
                "A task tried to dispose the pool that runs it; it would wait for its own end. Dispose the pool "
                    + "where it "
                + "was made.");
        }
    }

    public static PoolMisuseException RecordsOneRun() => new(
        "This pool records, and a recording is of one run; another was going on. Run one after the other, or use a "
            + "second pool.");
}
