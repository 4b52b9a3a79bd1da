using System.Diagnostics.CodeAnalysis;

namespace Rookery.Checking.States;

/// <summary>A buffer or a list of writes is full: exploration begins again with a longer one.</summary>
[SuppressMessage("Design", "CA1064", Justification = "Never leaves the explorer.")]
internal sealed class CapacityOverflowException(int list) : Exception
{
    /// <summary>Which: a thread's buffer, or a place's writes.</summary>
    public int List { get; } = list;

    [DoesNotReturn]
    public static void Throw(int list) => throw new CapacityOverflowException(list);
}
