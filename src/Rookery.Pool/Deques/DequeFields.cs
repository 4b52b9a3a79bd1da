using System.Runtime.InteropServices;

namespace Rookery.Pool.Deques;

/// <summary>The shared memory of a lock-free deque.</summary>
/// <remarks>
/// The owner writes the first two all the time, thieves write <see cref="Top"/> once a steal. They lie 128 bytes apart
/// and as far from their neighbours (two cache lines: processors fetch lines in pairs), so that a steal takes no line
/// from an owner that is only pushing, and the other way round.
/// </remarks>
[StructLayout(LayoutKind.Explicit, Size = 4 * 128)]
internal struct DequeFields
{
    /// <summary>The slots, a power of two; written by the owner, read by all.</summary>
    [FieldOffset(128)]
    public int[] Items;

    /// <summary>Index of the next push; written by the owner, read by all.</summary>
    [FieldOffset(136)]
    public long Bottom;

    /// <summary>Index of the oldest task; written by whoever takes it, read by all. It only grows.</summary>
    [FieldOffset(256)]
    public long Top;

    /// <summary>
    /// Always 0, and nobody's but the owner's: its full fences lock this word, on a line that no other processor ever
    /// asks for.
    /// </summary>
    [FieldOffset(384)]
    public long FenceWord;
}
