using System.Collections.Frozen;
using System.Collections.Immutable;

namespace Rookery.Checking.Parsing;

/// <summary>The words of the notation.</summary>
internal static class AlgorithmWords
{
    /// <summary>Words that cannot be names, since they stand inside expressions or at the end of lines.</summary>
    public static FrozenSet<string> Reserved { get; } = FrozenSet.Create(
        StringComparer.Ordinal, "and", "or", "not", "if", "then", "else", "acquire", "release", "relaxed");

    /// <summary>First words of lines in operations, in the order in which messages list them.</summary>
    public static ImmutableArray<string> Statements { get; } =
        ["let", "fence", "lock", "unlock", "if", "else", "while", "return", "assert", "cas", "add", "swap"];

    /// <summary>First words of lines outside operations, in the order in which messages list them.</summary>
    public static ImmutableArray<string> TopLevel { get; } =
        ["param", "const", "shared", "operation", "scenario", "expect", "exists", "drain", "observe"];

    /// <summary>Answers of operations that are words.</summary>
    public static ImmutableArray<string> Results { get; } = ["empty", "lost", "full", "done"];

    /// <summary>Functions that only compute.</summary>
    public static ImmutableArray<string> Functions { get; } = ["min", "max", "abs"];

    /// <summary>Functions that read and write a shared place in one step.</summary>
    public static ImmutableArray<string> Updates { get; } = ["cas", "add", "swap"];

    /// <summary>What to write for a word that other notations have; empty when it is not known.</summary>
    public static string HintFor(string word) => word switch
    {
        "elif" or "elsif" or "elseif" => "write else if",
        "for" or "loop" or "repeat" or "do" or "until" => "loops are while CONDITION",
        "var" or "set" or "int" or "long" or "local" => "write let NAME = VALUE",
        "atomic" or "volatile" or "global" => "write shared NAME = VALUE, outside operations",
        "def" or "func" or "function" or "proc" or "task" => "write operation NAME(PARAMETERS)",
        "mfence" or "barrier" or "membar" => "write fence, fence acquire or fence release",
        "mutex" or "acquire" => "write lock NAME",
        "release" => "write unlock NAME, or fence release",
        "break" or "continue" or "goto" => "leave a loop by its condition, or with return",
        "test" => "write scenario \"NAME\" and its threads",
        _ => "",
    };
}
