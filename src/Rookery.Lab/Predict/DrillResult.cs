namespace Rookery.Lab.Predict;

/// <summary>What became of one part of an answer.</summary>
internal enum DrillResult : byte
{
    /// <summary>It was as answered.</summary>
    Right,

    /// <summary>It was otherwise.</summary>
    Wrong,

    /// <summary>Nobody could know it: a draw decided. It does not count, whatever was answered.</summary>
    Random,
}
