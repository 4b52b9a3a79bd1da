using Rookery.Pool.Deques;

namespace Rookery.Pool.Tests.Deques;

public sealed class LockFreeDequeTests
{
    // The order of steps of Lê, Pop, Cohen and Zappa Nardelli (PPoPP 2013), from memory of its figure 1.
    [Fact]
    public void Operations_TakeTheirSteps_InThePublishedOrder()
    {
        foreach (FencePlacement fence in Enum.GetValues<FencePlacement>())
        {
            var deque = new LockFreeDeque<RecordedSteps>(fence);
            Assert.Equal(
                [
                    DequeStep.PushReadBottom, DequeStep.PushReadTop, DequeStep.PushWriteItem, DequeStep.PushFence,
                    DequeStep.PushWriteBottom,
                ],
                RecordedSteps.Of(() => deque.Push(1)));
            deque.Push(2);
            deque.Push(3);
            Assert.Equal(
                [
                    DequeStep.TakeReadBottom, DequeStep.TakeWriteBottom, DequeStep.TakeFence, DequeStep.TakeReadTop,
                    DequeStep.TakeReadItem,
                ],
                RecordedSteps.Of(() => Assert.Equal(3, deque.TakeNewest())));
            Assert.Equal(
                [
                    DequeStep.StealReadTop, DequeStep.StealFence, DequeStep.StealReadBottom, DequeStep.StealReadArray,
                    DequeStep.StealReadItem, DequeStep.StealContest,
                ],
                RecordedSteps.Of(() => Assert.Equal(StealOutcome.Taken, deque.TrySteal(out _))));
            Assert.Equal(
                [
                    DequeStep.TakeReadBottom, DequeStep.TakeWriteBottom, DequeStep.TakeFence, DequeStep.TakeReadTop,
                    DequeStep.TakeReadItem, DequeStep.TakeContest, DequeStep.TakeRestoreBottom,
                ],
                RecordedSteps.Of(() => Assert.Equal(2, deque.TakeNewest())));
            Assert.Equal(
                [
                    DequeStep.TakeReadBottom, DequeStep.TakeWriteBottom, DequeStep.TakeFence, DequeStep.TakeReadTop,
                    DequeStep.TakeRestoreBottom,
                ],
                RecordedSteps.Of(() => Assert.Equal(StealOutcome.Empty, deque.TryTake(out _))));
        }
    }

    [Fact]
    public void Deque_OfOneThread_IsAStackForItsOwnerAndAQueueForThieves() =>
        Gen.Int[0, 3].List[0, 300].Sample(operations =>
        {
            foreach (WorkQueue deque in Kinds())
            {
                var model = new LinkedList<int>();
                int next = 0;
                foreach (int operation in operations)
                {
                    if (operation <= 1)
                    {
                        deque.Push(next);
                        model.AddLast(next++);
                    }
                    else
                    {
                        bool isTake = operation == 2;
                        StealOutcome outcome = isTake ? deque.TryTake(out int task) : deque.TrySteal(out task);
                        Assert.Equal(model.Count > 0 ? StealOutcome.Taken : StealOutcome.Empty, outcome);
                        int expected = model.Count == 0 ? -1 : isTake ? model.Last!.Value : model.First!.Value;
                        Assert.Equal(expected, task);
                        if (model.Count > 0 && isTake)
                            model.RemoveLast();
                        else if (model.Count > 0)
                            model.RemoveFirst();
                    }

                    Assert.Equal(model.Count, deque.Count);
                }
            }
        });

    private static IEnumerable<WorkQueue> Kinds() =>
    [
        new LockFreeDeque<NoSteps>(FencePlacement.Thief, 2), new LockFreeDeque<NoSteps>(FencePlacement.Owner, 2),
        new ThiefLockDeque<NoSteps>(), new OneLockDeque<NoSteps>(OwnerTakes.Newest, ThiefTakes.Oldest),
    ];
}
