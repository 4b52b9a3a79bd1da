using Rookery.Pool.Workers;

namespace Rookery.Pool;

/// <content>The numbers of frames.</content>
public sealed partial class WorkerPool
{
    /// <summary>The frame of a number from a deque.</summary>
    internal Frame FrameOf(int number) =>

        // order: acquire; the table is read after the number. pairs with: the release in AddFrames, which comes
        // before the push
        // of any number in it. else: a table that is too short.
        Volatile.Read(ref _frames)[number];

    /// <summary>Makes the frames of a worker from one depth on.</summary>
    internal void AddFrames<TTask, TResult>(WorkerCore owner, Frame<TTask, TResult>[] frames, int from)
        where TTask : IForkTask<TResult>
    {
        lock (_gate)
        {
            Frame[] table = _frames;
            int needed = _frameCount + frames.Length - from;
            if (needed > table.Length)
                Array.Resize(ref table, Math.Max(needed, table.Length * 2));
            for (int depth = from; depth < frames.Length; depth++)
            {
                frames[depth] = new(owner, depth, _frameCount);
                table[_frameCount++] = frames[depth];
            }

            // order: release; the entries may not move below. pairs with: FrameOf. else: a null frame.
            Volatile.Write(ref _frames, table);
        }
    }
}
