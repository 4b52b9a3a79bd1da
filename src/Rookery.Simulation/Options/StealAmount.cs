namespace Rookery.Simulation;

/// <summary>How much a thief moves at once.</summary>
/// <remarks>The first value is the default.</remarks>
public enum StealAmount : byte
{
    /// <summary><c>one</c>: One task.</summary>
    [OptionWord("one")]
    One,

    /// <summary><c>half</c>: Half of the deque, rounded up.</summary>
    [OptionWord("half")]
    Half,
}
