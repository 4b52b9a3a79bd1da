using Rookery.Pool.Deques;

namespace Rookery.Pool.Tests.Deques;

/// <summary>
/// A deque with the classic mistake: its owner takes the last task without asking whether a thief did.
/// </summary>
internal sealed class UncontestedDeque : WorkQueue
{
    private readonly int[] _items = new int[64];
    private long _top;
    private long _bottom;

    /// <inheritdoc/>
    public override int Count => (int)Math.Max(0, _bottom - _top);

    /// <inheritdoc/>
    public override void Push(int task)
    {
        ScheduledSteps.At(DequeStep.PushWriteItem);
        _items[_bottom] = task;
        ScheduledSteps.At(DequeStep.PushWriteBottom);
        _bottom++;
    }

    /// <inheritdoc/>
    public override StealOutcome TryTake(out int task)
    {
        task = -1;
        ScheduledSteps.At(DequeStep.TakeWriteBottom);
        _bottom--;
        ScheduledSteps.At(DequeStep.TakeReadTop);
        if (_top > _bottom)
        {
            ScheduledSteps.At(DequeStep.TakeRestoreBottom);
            _bottom++;
            return StealOutcome.Empty;
        }

        ScheduledSteps.At(DequeStep.TakeReadItem);
        task = _items[_bottom];
        return StealOutcome.Taken;
    }

    /// <inheritdoc/>
    public override StealOutcome TrySteal(out int task)
    {
        ScheduledSteps.At(DequeStep.StealReadTop);
        long top = _top;
        ScheduledSteps.At(DequeStep.StealReadBottom);
        task = -1;
        if (top >= _bottom)
            return StealOutcome.Empty;
        ScheduledSteps.At(DequeStep.StealReadItem);
        task = _items[top];
        ScheduledSteps.At(DequeStep.StealContest);
        return Interlocked.CompareExchange(ref _top, top + 1, top) == top ? StealOutcome.Taken : StealOutcome.LostRace;
    }
}
