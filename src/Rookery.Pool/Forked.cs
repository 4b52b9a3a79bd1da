using Rookery.Pool.Workers;

namespace Rookery.Pool;

/// <summary>A forked child, to be joined once, on the worker that forked it.</summary>
/// <remarks>
/// Small and without identity of its own: copies stand for the same child. <c>default</c> stands for none; joining
/// it, or
/// joining a child twice or on another worker, is a <see cref="PoolMisuseException"/>.
/// </remarks>
/// <typeparam name="TTask">The child's type of task.</typeparam>
/// <typeparam name="TResult">What it computes.</typeparam>
public readonly struct Forked<TTask, TResult>
    where TTask : IForkTask<TResult>
{
    internal readonly Frame<TTask, TResult>? Frame;
    internal readonly long Word;

    internal Forked(Frame<TTask, TResult> frame, long word)
    {
        Frame = frame;
        Word = word;
    }
}
