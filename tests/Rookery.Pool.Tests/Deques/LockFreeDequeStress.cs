using System.Collections.Concurrent;
using Rookery.Pool.Deques;

namespace Rookery.Pool.Tests.Deques;

/// <summary>Histories of real threads, judged by a general checker of linearizability.</summary>
public sealed class LockFreeDequeStress
{
    public static TheoryData<string> Kinds => ["thief's fence", "owner's fence", "thief lock", "one lock"];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Histories_OfOwnerAndThieves_AreLinearizable(string kind)
    {
        for (int round = 0; round < 60; round++)
        {
            DequeOperation[] history = Race(Make(kind), thieves: 2, seed: round);
            Assert.True(
                Linearizability.IsDeque(history),
                $"round {round}\n{string.Join('\n', history.OrderBy(o => o.Invoked))}");
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Tasks_PushedAndStolenForLong_ComeOutOnce(string kind)
    {
        const int tasks = 60_000;
        WorkQueue deque = Make(kind);
        int[] seen = new int[tasks];
        bool isOver = false;
        Thread[] thieves =
        [
            .. Enumerable.Range(0, 2).Select(_ => new Thread(() =>
            {
                while (!Volatile.Read(ref isOver))
                {
                    if (deque.TrySteal(out int task) == StealOutcome.Taken)
                        Interlocked.Increment(ref seen[task]);
                }
            })),
        ];
        foreach (Thread thief in thieves)
            thief.Start();
        var random = new Random(3);
        for (int task = 0; task < tasks; task++)
        {
            deque.Push(task);
            if (random.Next(3) > 0 && deque.TryTake(out int own) == StealOutcome.Taken)
                Interlocked.Increment(ref seen[own]);
        }

        while (deque.TryTake(out int left) == StealOutcome.Taken)
            Interlocked.Increment(ref seen[left]);
        Volatile.Write(ref isOver, true);
        foreach (Thread thief in thieves)
            thief.Join();
        Assert.All(seen, count => Assert.Equal(1, count));
    }

    private static WorkQueue Make(string kind) => kind switch
    {
        "thief's fence" => new LockFreeDeque<NoSteps>(FencePlacement.Thief, 2),
        "owner's fence" => new LockFreeDeque<NoSteps>(FencePlacement.Owner, 2),
        "thief lock" => new ThiefLockDeque<NoSteps>(),
        _ => new OneLockDeque<NoSteps>(OwnerTakes.Newest, ThiefTakes.Oldest),
    };

    // A counter that every operation raises is the clock: an operation is over before another begins only if the
    // counter
    // says so, and raising it is a full fence on either side.
    private static DequeOperation[] Race(WorkQueue deque, int thieves, int seed)
    {
        var done = new ConcurrentBag<DequeOperation>();
        int clock = 0;
        using var start = new Barrier(thieves + 1);
        void Do(DequeAction action, int pushed)
        {
            int invoked = Interlocked.Increment(ref clock);
            int task = pushed;
            StealOutcome outcome = StealOutcome.Taken;
            if (action == DequeAction.Push)
                deque.Push(pushed);
            else
                outcome = action == DequeAction.Take ? deque.TryTake(out task) : deque.TrySteal(out task);
            done.Add(new(action, outcome, outcome == StealOutcome.Taken ? task : -1, invoked, Interlocked.Increment(
                ref clock)));
        }

        Thread[] threads =
        [
            .. Enumerable.Range(0, thieves).Select(_ => new Thread(() =>
            {
                start.SignalAndWait();
                for (int i = 0; i < 4; i++)
                    Do(DequeAction.Steal, -1);
            })),
        ];
        foreach (Thread thread in threads)
            thread.Start();
        var random = new Random(seed);
        start.SignalAndWait();
        int next = 0;
        for (int i = 0; i < 10; i++)
            Do(random.Next(5) < 3 ? DequeAction.Push : DequeAction.Take, next++);
        foreach (Thread thread in threads)
            thread.Join();
        while (deque.Count > 0)
            Do(DequeAction.Take, -1);
        return [.. done];
    }
}
