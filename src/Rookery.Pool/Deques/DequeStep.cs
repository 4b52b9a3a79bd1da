namespace Rookery.Pool.Deques;

/// <summary>
/// The steps of the deques, one for each access to shared memory and each fence, in the order of the lock-free one.
/// </summary>
/// <remarks>
/// The deques with locks pass those that they have in common with it, and the three at the end.
/// The labels of fences (F1 to F3) and of the other orders (A1 to A4) are the same in <see
/// cref="LockFreeDeque{TSteps}"/>
/// and in the algorithm's text for the checker. A test compares the order in which the code passes them with this list.
/// </remarks>
internal enum DequeStep
{
    /// <summary>push: <c>let b = bottom</c>, relaxed.</summary>
    PushReadBottom,

    /// <summary>push: <c>let t = top acquire</c> (A1).</summary>
    PushReadTop,

    /// <summary>push: <c>item[b] = x</c>, relaxed.</summary>
    PushWriteItem,

    /// <summary>push: <c>fence release</c> (F1).</summary>
    PushFence,

    /// <summary>push: <c>bottom = b + 1</c>, relaxed.</summary>
    PushWriteBottom,

    /// <summary>take: <c>let b = bottom - 1</c>, relaxed.</summary>
    TakeReadBottom,

    /// <summary>take: <c>bottom = b</c>, relaxed.</summary>
    TakeWriteBottom,

    /// <summary>take: <c>fence</c>, full (F2).</summary>
    TakeFence,

    /// <summary>take: <c>let t = top</c>, relaxed.</summary>
    TakeReadTop,

    /// <summary>take: <c>let x = item[b]</c>, relaxed.</summary>
    TakeReadItem,

    /// <summary>take, the last element: <c>cas(top, t, t + 1)</c>.</summary>
    TakeContest,

    /// <summary>take, empty or last element: <c>bottom = b + 1</c>, relaxed.</summary>
    TakeRestoreBottom,

    /// <summary>steal: <c>let t = top acquire</c> (A2).</summary>
    StealReadTop,

    /// <summary>steal: <c>fence</c>, full (F3).</summary>
    StealFence,

    /// <summary>steal: <c>let b = bottom acquire</c> (A3).</summary>
    StealReadBottom,

    /// <summary>steal: which array, acquire (A4).</summary>
    StealReadArray,

    /// <summary>steal: <c>let x = item[t]</c>, relaxed.</summary>
    StealReadItem,

    /// <summary>steal: <c>cas(top, t, t + 1)</c>.</summary>
    StealContest,

    /// <summary>Takes the lock, for those that have one.</summary>
    EnterLock,

    /// <summary>steal with the thieves' lock: <c>top = t + 1</c> and a full fence, before the look at bottom.</summary>
    StealRaiseTop,

    /// <summary>steal with the thieves' lock: <c>top = t</c>, since nothing was there.</summary>
    StealRestoreTop,
}
