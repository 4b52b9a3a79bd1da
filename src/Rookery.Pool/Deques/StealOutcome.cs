namespace Rookery.Pool.Deques;

/// <summary>How an attempt to steal ended.</summary>
internal enum StealOutcome
{
    /// <summary>Nothing was there.</summary>
    Empty,

    /// <summary>A task was taken.</summary>
    Taken,

    /// <summary>A task was seen, and somebody else took it.</summary>
    LostRace,
}
