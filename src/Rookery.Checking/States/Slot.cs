using System.Runtime.CompilerServices;

namespace Rookery.Checking.States;

/// <summary>Where in the words of a state one number lies.</summary>
/// <remarks>
/// Hot: a state is read and written in place, so that exploring allocates nothing for a state. Reading is a load, a
/// shift, a mask and an addition.
/// </remarks>
/// <param name="word">Which word.</param>
/// <param name="shift">How far from its right end.</param>
/// <param name="mask">Its bits after shifting; 0 for a number that never changes.</param>
/// <param name="low">The number that all bits 0 stand for.</param>
/// <param name="index">Its number among the slots.</param>
internal readonly struct Slot(int word, int shift, ulong mask, long low, int index)
{
    private readonly ulong _mask = mask;
    private readonly long _low = low;
    private readonly int _word = word;
    private readonly byte _shift = (byte)shift;
    private readonly int _index = index;

    /// <summary>The number.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public long Get(ReadOnlySpan<ulong> state) => unchecked((long)((state[_word] >> _shift) & _mask) + _low);

    /// <summary>Writes the number.</summary>
    /// <exception cref="LayoutOverflowException">It does not fit: the state needs another layout.</exception>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Set(Span<ulong> state, long value)
    {
        unchecked
        {
            ulong bits = (ulong)(value - _low);
            if (bits > _mask)
                LayoutOverflowException.Throw(_index, value);
            ref ulong word = ref state[_word];
            word = (word & ~(_mask << _shift)) | (bits << _shift);
        }
    }
}
