namespace Rookery.Traces.Narration;

/// <summary>Why a thief looks at that victim. Only what the options say and the trace bears out.</summary>
internal enum VictimReason : byte
{
    /// <summary>Not known: nothing is said.</summary>
    Unknown,

    /// <summary>There is no other worker.</summary>
    OnlyOther,

    /// <summary>Drawn at random.</summary>
    Random,

    /// <summary>The next in turn.</summary>
    InTurn,

    /// <summary>The others from the lowest number up, from the front after a success.</summary>
    Lowest,

    /// <summary>Its last steal succeeded there.</summary>
    LastSuccess,

    /// <summary>The others by distance, from the front after a success.</summary>
    Nearest,

    /// <summary>It has the most queued tasks.</summary>
    Fullest,

    /// <summary>It has a child that the thief waits for.</summary>
    HasAwaitedChild,
}
