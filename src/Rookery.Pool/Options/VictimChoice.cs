namespace Rookery.Pool;

/// <summary>At whom a worker without work looks.</summary>
public enum VictimChoice
{
    /// <summary>Each of the others with the same chance (the default).</summary>
    Random,

    /// <summary>The others in turn, going on where it stopped.</summary>
    RoundRobin,

    /// <summary>From the lowest number up, from the front after each success.</summary>
    Lowest,

    /// <summary>The last victim again until that fails, then at random.</summary>
    LastSuccess,

    /// <summary>By distance around a ring of worker numbers.</summary>
    Nearest,

    /// <summary>The one whose deque seems fullest; sizes are read without a lock and may be out of date.</summary>
    Fullest,
}
