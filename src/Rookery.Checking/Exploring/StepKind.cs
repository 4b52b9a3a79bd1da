namespace Rookery.Checking.Exploring;

/// <summary>Who moves in a step.</summary>
internal enum StepKind
{
    /// <summary>A thread makes its next shared access.</summary>
    Access,

    /// <summary>Memory moves on by itself: a buffer gives a write to memory.</summary>
    Drift,
}
