using System.Runtime.CompilerServices;
using System.Runtime.ExceptionServices;

namespace Rookery.Pool.Workers;

/// <summary>The place of a forked child: it belongs to one worker and one depth, and is used again and again.</summary>
/// <remarks>
/// Forks and joins nest, so the open children of a worker form a stack, and depth <c>d</c> of it has one frame for each
/// type of task. So a fork allocates nothing once that depth has been reached before. The deque holds the frame's
/// number: storing a number costs less than storing a reference, about which the collector wants to know.
/// </remarks>
internal abstract class Frame(WorkerCore owner, int depth, int number)
{
    /// <summary>
    /// What <see cref="WorkerCore.Key"/> is just before the fork into this frame, and again after its join.
    /// </summary>
    public readonly long Key = owner.BaseKey + depth;

    /// <summary>What deques call it.</summary>
    public readonly int Number = number;

    /// <summary>Which fork (serial number and run), and what has become of it (<see cref="FrameState"/>).</summary>
    /// <remarks>
    /// Written by the owner at the fork and the join, and by whoever runs the child when it ends, with release; read
    /// with
    /// acquire by the owner, who reads result or exception after it.
    /// </remarks>
    public long Word;

    /// <summary>Which worker runs it; -1 before. For leapfrogging; a hint.</summary>
    public int Runner = -1;

    /// <summary>The child's number in the notes; -1 when nothing is recorded.</summary>
    public int Task = -1;

    /// <summary>What ended it, if <see cref="FrameState.Failed"/>.</summary>
    public ExceptionDispatchInfo? Failure;

    /// <summary>The worker that forks into it.</summary>
    public WorkerCore Owner { get; } = owner;

    /// <summary>Open children of the owner beneath it.</summary>
    public int Depth { get; } = depth;

    /// <summary>Whether the child has ended; what it wrote can then be read.</summary>
    public bool IsFinished =>

        // order: acquire; result and exception are read after. pairs with: the release in Finish. else: half a result.
        (Volatile.Read(ref Word) & FrameState.Mask) is FrameState.Done or FrameState.Failed;

    /// <summary>Runs the child on a worker and finishes the frame; exceptions end up in it.</summary>
    public abstract void Execute(WorkerCore core);

    /// <summary>Marks the child as ended.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    protected void Finish(long word, long state) =>

        // order: release; the result may not move below. pairs with: the acquire in IsFinished. else: half a result.
        Volatile.Write(ref Word, word | state);
}
