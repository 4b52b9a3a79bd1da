namespace Rookery.Checking.States;

/// <summary>What a part of a state says.</summary>
internal enum SlotKind
{
    /// <summary>At which point a thread waits.</summary>
    Point,

    /// <summary>Whether a thread has made a step of its operation; kept only where the point does not tell.</summary>
    Begun,

    /// <summary>A name of a thread's own.</summary>
    Local,

    /// <summary>A result of an operation.</summary>
    Result,

    /// <summary>How many operations another thread had ended when an operation began.</summary>
    Clock,

    /// <summary>What a place holds.</summary>
    Place,

    /// <summary>How many writes wait in a thread's buffer.</summary>
    BufferCount,

    /// <summary>To which place such a write goes.</summary>
    BufferPlace,

    /// <summary>What it writes.</summary>
    BufferValue,

    /// <summary>How many writes of a place are remembered.</summary>
    MessageCount,

    /// <summary>What one of them wrote.</summary>
    MessageValue,

    /// <summary>Whether nothing may come between it and the one before.</summary>
    MessageJoined,

    /// <summary>How far another place has come for who reads it with acquire.</summary>
    MessageView,

    /// <summary>How far a place has come for a thread.</summary>
    View,

    /// <summary>How far it will have come after an acquire fence.</summary>
    AcquireView,

    /// <summary>How far it had come at the last release fence.</summary>
    ReleaseView,

    /// <summary>How far it had come at the last full fence of any thread.</summary>
    FenceView,
}
