using Rookery.Pool.Deques;

namespace Rookery.Pool.Tests.Deques;

/// <summary>The lock-free deque with one of the classic mistakes, which a test has to find.</summary>
internal sealed class MistakenDeque<TSteps>(DequeMistake mistake) : WorkQueue
    where TSteps : struct, IDequeSteps
{
    private readonly int[] _items = new int[64];
    private long _top;
    private long _bottom;

    /// <inheritdoc/>
    public override int Count => (int)Math.Max(0, _bottom - _top);

    /// <inheritdoc/>
    public override void Push(int task)
    {
        TSteps.At(DequeStep.PushWriteItem);
        _items[_bottom] = task;
        TSteps.At(DequeStep.PushWriteBottom);
        _bottom++;
    }

    /// <inheritdoc/>
    public override StealOutcome TryTake(out int task)
    {
        task = -1;
        long bottom = _bottom - 1;
        long top = 0;
        if (mistake == DequeMistake.ReadsTopFirst)
            top = ReadTop();
        TSteps.At(DequeStep.TakeWriteBottom);
        _bottom = bottom;
        if (mistake != DequeMistake.ReadsTopFirst)
            top = ReadTop();
        if (top < bottom || (top == bottom && mistake == DequeMistake.SkipsTheContest))
        {
            TSteps.At(DequeStep.TakeReadItem);
            task = _items[bottom];
            return StealOutcome.Taken;
        }

        StealOutcome outcome = StealOutcome.Empty;
        if (top == bottom)
        {
            TSteps.At(DequeStep.TakeContest);
            outcome = Interlocked.CompareExchange(ref _top, top + 1, top) == top
                ? StealOutcome.Taken
                : StealOutcome.LostRace;
        }

        if (outcome == StealOutcome.Taken)
            task = _items[bottom];
        TSteps.At(DequeStep.TakeRestoreBottom);
        _bottom = bottom + 1;
        return outcome;
    }

    /// <inheritdoc/>
    public override StealOutcome TrySteal(out int task)
    {
        task = -1;
        long bottom = 0;
        if (mistake == DequeMistake.ReadsBottomFirst)
            bottom = ReadBottom();
        TSteps.At(DequeStep.StealReadTop);
        long top = _top;
        if (mistake != DequeMistake.ReadsBottomFirst)
            bottom = ReadBottom();
        if (top >= bottom)
            return StealOutcome.Empty;
        TSteps.At(DequeStep.StealReadItem);
        task = _items[top];
        TSteps.At(DequeStep.StealContest);
        return Interlocked.CompareExchange(ref _top, top + 1, top) == top ? StealOutcome.Taken : StealOutcome.LostRace;
    }

    private long ReadTop()
    {
        TSteps.At(DequeStep.TakeReadTop);
        return _top;
    }

    private long ReadBottom()
    {
        TSteps.At(DequeStep.StealReadBottom);
        return _bottom;
    }
}
