using Rookery.Pool.Deques;

namespace Rookery.Pool.Tests.Deques;

/// <summary>
/// The pool's own deque in every order of its steps: whatever thread is quicker where, each task comes out once.
/// </summary>
/// <remarks>Sequentially consistent orders; what weaker memory does is for the checker's models.</remarks>
public sealed class LockFreeDequeSchedules
{
    // One task, wanted by owner and thief: all orders.
    [Fact]
    public void LastTask_BetweenOwnerAndThief_ComeOutOnceInEveryOrder()
    {
        (int orders, bool isComplete) = StepScheduler.Explore(
            () => Scenario(
                new LockFreeDeque<ScheduledSteps>(FencePlacement.Owner, 2), tasks: 1,
                [
                    (deque, saw) => saw(deque.TryTake(out int task), task),
                    (deque, saw) => saw(deque.TrySteal(out int task), task),
                ]),
            ordersMax: 100_000);
        Assert.True(isComplete);
        Assert.InRange(orders, 500, 100_000);
    }

    // One task and two thieves, while the owner takes: all orders are too many for a test; some hundreds of them.
    [Fact]
    public void LastTask_BetweenOwnerAndTwoThieves_ComesOutOnce()
    {
        (int orders, _) = StepScheduler.Explore(
            () => Scenario(
                new LockFreeDeque<ScheduledSteps>(FencePlacement.Owner, 2), tasks: 1,
                [
                    (deque, saw) => saw(deque.TryTake(out int task), task),
                    (deque, saw) => saw(deque.TrySteal(out int task), task),
                    (deque, saw) => saw(deque.TrySteal(out int task), task),
                ]),
            ordersMax: 500);
        Assert.Equal(500, orders);
    }

    // While the array grows, a thief reads from the old one: all orders of a push that grows and a steal.
    [Fact]
    public void Tasks_WhileTheArrayGrows_ComeOutOnceInEveryOrder()
    {
        (_, bool isComplete) = StepScheduler.Explore(
            () => Scenario(
                new LockFreeDeque<ScheduledSteps>(FencePlacement.Owner, 2), tasks: 2,
                [
                    (deque, saw) =>
                    {
                        deque.Push(2);
                        saw(deque.TryTake(out int task), task);
                    },
                    (deque, saw) => saw(deque.TrySteal(out int task), task),
                ], all: 3),
            ordersMax: 100_000);
        Assert.True(isComplete);
    }

    // The same scenario with an owner that skips the contest has to fail, or the tests above would prove nothing.
    [Fact]
    public void LastTask_WhenTheOwnerSkipsTheContest_ComesOutTwice()
    {
        Exception? found = Record.Exception(() => StepScheduler.Explore(
            () => Scenario(
                new MistakenDeque<ScheduledSteps>(DequeMistake.SkipsTheContest), tasks: 1,
                [
                    (deque, saw) => saw(deque.TryTake(out int task), task),
                    (deque, saw) => saw(deque.TrySteal(out int task), task),
                ]),
            ordersMax: 100_000));
        Assert.Contains("came out 2 times", found?.Message, StringComparison.Ordinal);
    }

    private delegate void Seen(StealOutcome outcome, int task);

    private delegate void Operations(WorkQueue deque, Seen saw);

    private static (Action[] Threads, Action Check) Scenario(
        WorkQueue deque, int tasks, Operations[] threads, int all = 0)
    {
        all = Math.Max(all, tasks);
        int[] seen = new int[all];
        void Saw(StealOutcome outcome, int task)
        {
            if (outcome == StealOutcome.Taken)
                Interlocked.Increment(ref seen[task]);
        }

        for (int task = 0; task < tasks; task++)
            deque.Push(task);
        return (
            [.. threads.Select(operations => (Action)(() => operations(deque, Saw)))],
            () =>
            {
                while (deque.TryTake(out int left) == StealOutcome.Taken)
                    Saw(StealOutcome.Taken, left);
                for (int task = 0; task < all; task++)
                    Assert.True(seen[task] == 1, $"task {task} came out {seen[task]} times");
            }
        );
    }
}
