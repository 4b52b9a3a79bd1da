namespace Rookery.Checking.States;

/// <summary>Names a part of a state.</summary>
/// <param name="Kind">What it says.</param>
/// <param name="Thread">Of which thread; -1 for none.</param>
/// <param name="First">Which: an operation's order, a register, a place.</param>
/// <param name="Second">Which of those.</param>
/// <param name="Third">Which of those.</param>
/// <param name="Other">About which other thread; -1 for none.</param>
internal readonly record struct SlotKey(
    SlotKind Kind, int Thread = -1, int First = 0, int Second = 0, int Third = 0, int Other = -1)
{
    /// <summary>What it has in common with slots that hold numbers of about the same size.</summary>
    public SlotKey Family() => Kind switch
    {
        SlotKind.View or SlotKind.AcquireView or SlotKind.ReleaseView or SlotKind.FenceView =>
            new(SlotKind.View, First: First),
        SlotKind.MessageView => new(SlotKind.View, First: Third),
        SlotKind.MessageValue => new(Kind, First: First),
        SlotKind.BufferPlace or SlotKind.BufferValue => new(Kind, Thread),
        _ => this,
    };

    /// <summary>The same part after threads have changed places.</summary>
    public SlotKey Permute(ReadOnlySpan<int> threads) => this with
    {
        Thread = Thread < 0 ? -1 : threads[Thread],
        Other = Other < 0 ? -1 : threads[Other],
    };
}
