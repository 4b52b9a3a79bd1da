using Rookery.Checking;

namespace Rookery.Lab.Deques;

/// <summary>How large a check in the page may grow.</summary>
internal static class CheckLimits
{
    /// <summary>Most states: about a minute.</summary>
    public const long StatesMax = 2_000_000;

    /// <summary>Most bytes of stored states: a phone has that, too.</summary>
    public const long BytesMax = 192L << 20;

    private const int StatesAtOnce = 24;

    /// <summary>How a scenario is checked.</summary>
    /// <param name="memory">The memory model.</param>
    /// <param name="classifies">Whether operations are classified by their progress.</param>
    /// <param name="goesOn">Asked now and then; false ends the search with what it has.</param>
    public static CheckOptions Options(MemoryModel memory, bool classifies, Func<bool> goesOn) => new()
    {
        Memory = memory,
        ClassifiesProgress = classifies,
        StatesMax = StatesMax,
        BytesMax = BytesMax,
        StatesAtOnce = StatesAtOnce,
        Progress = _ => goesOn(),
    };
}
