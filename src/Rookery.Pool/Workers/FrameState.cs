namespace Rookery.Pool.Workers;

/// <summary>What has become of a forked child; the low two bits of <see cref="Frame.Word"/>.</summary>
internal static class FrameState
{
    /// <summary>Queued, or being run by somebody.</summary>
    public const long Open = 0;

    /// <summary>Ran to its end; the result is in the frame.</summary>
    public const long Done = 1;

    /// <summary>Ended by an exception, which is in the frame.</summary>
    public const long Failed = 2;

    /// <summary>Joined while younger children of the same task were still open.</summary>
    public const long Joined = 3;

    /// <summary>The bits that hold one of these.</summary>
    public const long Mask = 3;

    /// <summary>Set in frames of pools without the fast path, so that no join takes it.</summary>
    public const long OffFastPath = 1 << 15;
}
