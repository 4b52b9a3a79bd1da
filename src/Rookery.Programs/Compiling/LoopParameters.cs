using System.Collections.Immutable;

namespace Rookery.Programs.Compiling;

/// <summary>The first arguments of every task that is made for a parallel loop.</summary>
internal static class LoopParameters
{
    public const int Lower = 0;
    public const int Upper = 1;
    public const int Grain = 2;
    public const int Count = 3;

    public static ImmutableArray<string> Names { get; } = ["lo", "hi", "grain"];
}
