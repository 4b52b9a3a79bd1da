namespace Rookery.Checking;

/// <summary>
/// How large an algorithm and its scenarios may be; a file that a class can open stays far below each.
/// </summary>
public static class AlgorithmLimits
{
    /// <summary>Threads of one scenario.</summary>
    public const int ThreadsMax = 8;

    /// <summary>Operations that all threads of one scenario run together.</summary>
    public const int InvocationsMax = 32;

    /// <summary>Results of one operation.</summary>
    public const int ResultsMax = 8;

    /// <summary>Single places of shared memory, elements of arrays included.</summary>
    public const int PlacesMax = 64;

    /// <summary>Names that one operation gives to values of its own.</summary>
    public const int LocalsMax = 32;

    /// <summary>
    /// Instructions that the code of one thread has after all its operations are put one after the other.
    /// </summary>
    public const int InstructionsMax = 20_000;

    /// <summary>Scenarios of one file.</summary>
    public const int ScenariosMax = 100;

    /// <summary>Largest value; smallest is its opposite.</summary>
    public const long ValueMax = int.MaxValue;

    /// <summary>Instructions between two shared accesses; more is a loop that never ends.</summary>
    public const int LocalInstructionsMax = 10_000;
}
