namespace Rookery.Pool;

/// <summary>How much a thief moves at once.</summary>
public enum StealAmount
{
    /// <summary>One task (the default).</summary>
    One,

    /// <summary>Half of what the deque seems to hold, rounded up, one task after the other.</summary>
    Half,
}
