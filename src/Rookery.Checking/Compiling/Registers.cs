namespace Rookery.Checking.Compiling;

/// <summary>How the registers of a thread are divided.</summary>
internal static class Registers
{
    /// <summary>First register of the constants; below it are the operation's own names.</summary>
    public const int Constants = AlgorithmLimits.LocalsMax;

    /// <summary>How many different constants one thread may have.</summary>
    public const int ConstantsMax = 480;

    /// <summary>First register of what an expression needs on its way.</summary>
    public const int Scratch = Constants + ConstantsMax;

    /// <summary>All registers.</summary>
    public const int Count = 2048;
}
