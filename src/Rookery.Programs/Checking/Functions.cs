using System.Collections.Immutable;

namespace Rookery.Programs.Checking;

/// <summary>The functions of the notation.</summary>
internal static class Functions
{
    /// <summary>Names, in the order in which the docs list them.</summary>
    public static ImmutableArray<string> Names { get; } = ["min", "max", "abs", "log2", "sqrt", "sum", "len", "pick"];

    /// <summary>How one is written; null when there is none of this name.</summary>
    public static string? SignatureOf(string name) => name switch
    {
        "min" => "min(a, b)",
        "max" => "max(a, b)",
        "abs" => "abs(a)",
        "log2" => "log2(a)",
        "sqrt" => "sqrt(a)",
        "sum" => "sum(data, lo, hi)",
        "len" => "len(data)",
        "pick" => "pick(lo, hi, key...)",
        _ => null,
    };

    /// <summary>Whether a function of <see cref="Names"/> takes this many arguments.</summary>
    public static bool Takes(string name, int count) => name switch
    {
        "min" or "max" => count == 2,
        "abs" or "log2" or "sqrt" or "len" => count == 1,
        "sum" => count == 3,
        _ => count >= 2,
    };

    /// <summary>Whether the first argument is the name of data.</summary>
    public static bool TakesData(string name) => name is "sum" or "len";
}
