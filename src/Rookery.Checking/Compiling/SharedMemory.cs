namespace Rookery.Checking.Compiling;

/// <summary>A shared name of a scenario.</summary>
/// <param name="Name">The name.</param>
/// <param name="FirstPlace">The number of its first place.</param>
/// <param name="Length">How many places it has; 1 for a single one.</param>
/// <param name="IsArray">Whether it was declared with a size.</param>
/// <param name="Initial">What its places hold at first.</param>
/// <param name="IsLock">Whether it is locked somewhere.</param>
internal sealed record SharedMemory(
    string Name, int FirstPlace, int Length, bool IsArray, long Initial, bool IsLock)
{
    /// <summary>What people call one of its places.</summary>
    public string NameOf(int place) =>
        IsArray ? FormattableString.Invariant($"{Name}[{place - FirstPlace}]") : Name;
}
