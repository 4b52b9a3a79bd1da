namespace Rookery.Pool.Workers;

/// <summary>Numbers the types of frames of this process, from 0, in the order of their first use.</summary>
internal static class FrameType
{
    private static int _count;

    /// <summary>A new number.</summary>
    public static int Next() => Interlocked.Increment(ref _count) - 1;
}
