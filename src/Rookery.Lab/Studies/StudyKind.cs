namespace Rookery.Lab.Studies;

/// <summary>What is asked of many runs.</summary>
internal enum StudyKind
{
    /// <summary>How speed-up grows with the number of workers.</summary>
    Curve,

    /// <summary>How a measure changes with one choice.</summary>
    Sweep,

    /// <summary>Whether a sentence about two choices is true.</summary>
    Claim,
}
