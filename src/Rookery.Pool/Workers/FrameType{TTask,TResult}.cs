namespace Rookery.Pool.Workers;

/// <summary>The number of one type of frames; a constant for the compiler once the type is in use.</summary>
internal static class FrameType<TTask, TResult>
    where TTask : IForkTask<TResult>
{
    public static readonly int Index = FrameType.Next();
}
