using System.Collections.Frozen;
using System.Collections.Immutable;

namespace Rookery.Programs.Parsing;

/// <summary>The words of the notation.</summary>
internal static class ProgramWords
{
    /// <summary>Words that cannot be names, since they stand inside expressions and loops.</summary>
    public static FrozenSet<string> Reserved { get; } =
        FrozenSet.Create(StringComparer.Ordinal, "and", "or", "not", "if", "then", "else", "in", "for");

    /// <summary>First words of statements, in the order in which messages list them.</summary>
    public static ImmutableArray<string> Statements { get; } =
        ["work", "fork", "call", "join", "let", "if", "else", "for", "block"];

    /// <summary>First words of lines outside tasks, in the order in which messages list them.</summary>
    public static ImmutableArray<string> TopLevel { get; } = ["param", "const", "data", "task", "start"];

    /// <summary>What to write for a word that other notations have; empty when it is not known.</summary>
    public static string HintFor(string word) => word switch
    {
        "elif" or "elsif" or "elseif" => "write else if",
        "while" or "loop" or "repeat" => "loops are for X in A..B; anything else is a task that calls itself",
        "spawn" or "async" or "go" => "write fork",
        "sync" or "wait" or "await" or "taskwait" => "write join",
        "return" => "tasks return no value; write work for the time that combining results takes",
        "parallel" or "pfor" or "forall" => "write fork for X in A..B",
        "var" or "set" or "int" or "long" => "write let NAME = VALUE",
        "def" or "func" or "function" or "proc" => "write task NAME(PARAMETERS)",
        "compute" or "sleep" => "write work for computing, block for waiting",
        _ => "",
    };
}
