using System.Diagnostics.CodeAnalysis;

namespace Rookery.Checking.States;

/// <summary>A number does not fit its slot: exploration begins again with a wider one.</summary>
[SuppressMessage("Design", "CA1064", Justification = "Never leaves the explorer.")]
internal sealed class LayoutOverflowException(int slot, long value) : Exception
{
    public int Slot { get; } = slot;

    public long Value { get; } = value;

    [DoesNotReturn]
    public static void Throw(int slot, long value) => throw new LayoutOverflowException(slot, value);
}
