namespace Rookery.Simulation;

/// <summary>Whom a thief looks at.</summary>
/// <remarks>The first value is the default.</remarks>
public enum VictimChoice : byte
{
    /// <summary><c>random</c>: Any other worker, each with the same chance.</summary>
    [OptionWord("random")]
    Random,

    /// <summary><c>round-robin</c>: The others in turn, going on where it stopped.</summary>
    [OptionWord("round-robin")]
    RoundRobin,

    /// <summary><c>lowest</c>: The others from the lowest number up, from the front after each success.</summary>
    [OptionWord("lowest")]
    Lowest,

    /// <summary>
    /// <c>last-success</c>: The worker of its last successful steal until that fails, then at random.
    /// </summary>
    [OptionWord("last-success")]
    LastSuccess,

    /// <summary><c>nearest</c>: The others by distance around a ring, from the front after each success.</summary>
    [OptionWord("nearest")]
    Nearest,

    /// <summary>
    /// <c>fullest</c>: The worker with the most queued tasks, lowest number first: an oracle that real machines lack.
    /// </summary>
    [OptionWord("fullest")]
    Fullest,
}
