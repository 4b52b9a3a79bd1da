using System.CommandLine;

namespace Rookery.CommandLine;

/// <summary>The files that commands take.</summary>
internal static class Arguments
{
    /// <summary>A program.</summary>
    public static Argument<string> Program =>
        new("FILE") { HelpName = "FILE", Description = "a program (.fj); docs/notation.md says how to write one" };

    /// <summary>A trace.</summary>
    public static Argument<string> Trace => new("TRACE")
    {
        HelpName = "TRACE",
        Description = "a trace (.parquet or .csv), of this program or any other; docs/trace.md says how to write one",
    };

    /// <summary>A lesson or a folder of lessons.</summary>
    public static Argument<string> Lessons => new("PATH")
    {
        HelpName = "PATH",
        Description = "a lesson (.md), or a folder of lessons; docs/lessons.md says how to write one",
    };

    /// <summary>The same, or nothing for the demo course.</summary>
    public static Argument<string> LessonsOrNone => new("PATH")
    {
        HelpName = "[PATH]",
        Description = "a lesson (.md), or a folder of lessons; the demo course when it is left out",
        Arity = ArgumentArity.ZeroOrOne,
    };

    /// <summary>Deque algorithms.</summary>
    public static Argument<string[]> Algorithms => new("FILE")
    {
        HelpName = "FILE...",
        Arity = ArgumentArity.OneOrMore,
        Description = "deque algorithms or litmus tests (.dq); docs/checker.md says how to write one",
    };

    /// <summary>Either.</summary>
    public static Argument<string> ProgramOrTrace =>
        new("FILE")
        {
            HelpName = "FILE|TRACE",
            Description = "a program (.fj), which is run, or a trace (.parquet or .csv)",
        };
}
