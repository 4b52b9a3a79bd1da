using Rookery.Programs;
using Rookery.Simulation;

namespace Rookery.Lessons;

/// <summary>How far a lesson may go: lessons come from strangers, and a class is waiting.</summary>
/// <remarks>Each limit has a message that names it and says what to do.</remarks>
public static class LessonLimits
{
    /// <summary>Longest lesson, in characters: a book of 400 pages.</summary>
    public const int TextMax = 1 << 20;

    /// <summary>Longest fenced block or front matter, in characters.</summary>
    public const int BlockMax = 1 << 14;

    /// <summary>Most fenced blocks with live parts in a lesson.</summary>
    public const int BlocksMax = 64;

    /// <summary>Most moments in one exhibit's strip.</summary>
    public const int StopsMax = 12;

    /// <summary>Most expectations of one exhibit.</summary>
    public const int ExpectationsMax = 40;

    /// <summary>Longest formula, in characters.</summary>
    public const int FormulaMax = 400;

    /// <summary>Largest picture that a lesson may show, in bytes: 4 MiB.</summary>
    public const int ImageBytesMax = 4 << 20;

    /// <summary>Most steps that the player of one exhibit carries.</summary>
    public const int FramesMax = 1_000;

    /// <summary>Most bytes of one player's pictures in one size; the player carries fewer steps rather than
    /// more.</summary>
    public const int FrameBytesMax = 1 << 20;

    /// <summary>Most events of a run in a lesson: some seconds of computing.</summary>
    public const long EventsMax = 2_000_000;

    /// <summary>Most workers of a run in a lesson.</summary>
    public const int WorkersMax = 4_096;

    /// <summary>Most seeds of one claim: two runs each.</summary>
    public const int SeedsMax = 1_000;

    /// <summary>Most answers of one check: files, times scenarios, times memory models.</summary>
    public const int ChecksMax = 48;

    /// <summary>Most states of one check, all its searches together: some seconds of computing.</summary>
    public const long StatesMax = 2_000_000;

    /// <summary>States of one check unless it asks for fewer or more.</summary>
    public const long StatesUsual = 500_000;

    /// <summary>Most bytes that the states of one search may take: 256 MiB.</summary>
    public const long StateBytesMax = 256L << 20;

    /// <summary>Limits on evaluating a lesson's programs.</summary>
    public static EvaluationLimits Evaluation { get; } = new(
        Tasks: 1_000_000, Depth: 10_000, Steps: 10_000_000, Actions: 20_000_000, Live: 1_000_000);

    /// <summary>Limits on the runs.</summary>
    public static RunLimits Run { get; } = new() { TasksMax = 1_000_000, EventsMax = EventsMax, ThreadsMax = 20_000 };
}
