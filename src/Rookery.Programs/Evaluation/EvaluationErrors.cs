using System.Diagnostics.CodeAnalysis;
using Rookery.Notation;
using Rookery.Programs.Compiling;
using static System.FormattableString;

namespace Rookery.Programs.Evaluation;

/// <summary>
/// What can go wrong while a program runs: codes <c>FJ040</c> to <c>FJ059</c>, limits from <c>FJ060</c>.
/// </summary>
internal static class EvaluationErrors
{
    [DoesNotReturn]
    public static void Overflow(SourceSpan span, string task, long left, string sign, long right) => Throw(new(
        "FJ040", span, Say($"{left} {sign} {right} does not fit in 64 bits{task}"), "use smaller numbers"));

    [DoesNotReturn]
    public static void Overflow(SourceSpan span, string task, string function, long value) => Throw(new(
        "FJ040", span, Say($"{function}({value}) does not fit in 64 bits{task}"), "use smaller numbers"));

    [DoesNotReturn]
    public static void SumOverflow(SourceSpan span, string task) => Throw(new(
        "FJ040", span, Say($"this sum does not fit in 64 bits{task}"), "use smaller numbers"));

    [DoesNotReturn]
    public static void DivisionByZero(SourceSpan span, string task, long left, string sign) => Throw(new(
        "FJ041", span, Say($"{left} {sign} 0: division by zero{task}"), "test for 0 before dividing"));

    [DoesNotReturn]
    public static void ShiftOutOfRange(SourceSpan span, string task, long count) => Throw(new(
        "FJ042", span, Say($"a shift by {count}: only 0 to 63 have a meaning{task}"), ""));

    [DoesNotReturn]
    public static void Domain(SourceSpan span, string task, string function, long value, string least) => Throw(new(
        "FJ043", span, Say($"{function}({value}) has no value: its argument must be at least {least}{task}"), ""));

    [DoesNotReturn]
    public static void Index(SourceSpan span, string task, long index, int count) => Throw(new(
        "FJ044", span, Say($"row {index} of data with {count} rows{task}"), "rows count from 0 to len - 1"));

    [DoesNotReturn]
    public static void SumBounds(SourceSpan span, string task, long from, long to, int count) => Throw(new(
        "FJ045", span, Say($"the sum of rows {from} up to {to} of data with {count} rows{task}"),
        "it takes 0 <= lo <= hi <= len"));

    [DoesNotReturn]
    public static void PickRange(SourceSpan span, string task, long lower, long upper) => Throw(new(
        "FJ046", span, Say($"pick between {lower} and {upper}: there is no such number{task}"),
        "the first argument must be at most the second"));

    [DoesNotReturn]
    public static void NegativeUnits(SourceSpan span, string task, string word, long units) => Throw(new(
        "FJ047", span, Say($"{word} {units}: time cannot be negative{task}"), ""));

    [DoesNotReturn]
    public static void StepsLimit(SourceSpan span, string task, long limit) => Throw(new(
        "FJ060", span,
        Say($"more than {limit} instructions without any work, fork, call or join (--limit-steps){task}"),
        Say($"raise it with --limit-steps {Raised(limit)} if the program is meant to compute that long"),
        IsLimit: true));

    [DoesNotReturn]
    public static void DepthLimit(SourceSpan span, string task, long limit) => Throw(new(
        "FJ061", span, Say($"tasks are nested more than {limit} deep (--limit-depth){task}"),
        Say($"look for a task that forks or calls itself without end, or raise it with --limit-depth {Raised(limit)}"),
        IsLimit: true));

    [DoesNotReturn]
    public static void TasksLimit(SourceSpan span, string task, long limit) => Throw(new(
        "FJ062", span, Say($"more than {limit} tasks (--limit-tasks){task}"),
        Say($"use a larger grain, or raise it with --limit-tasks {Raised(limit)}"), IsLimit: true));

    [DoesNotReturn]
    public static void LiveLimit(SourceSpan span, string task, long limit) => Throw(new(
        "FJ063", span,
        Say($"more than {limit} tasks at one time have been made and have not ended (--limit-live){task}"),
        Say($"join now and then, halve instead of forking in a loop, or raise it with --limit-live {Raised(limit)}"),
        IsLimit: true));

    [DoesNotReturn]
    public static void ActionsLimit(SourceSpan span, string task, long limit) => Throw(new(
        "FJ064", span, Say($"more than {limit} actions in one run (--limit-actions){task}"),
        Say($"use fewer, longer pieces of work, or raise it with --limit-actions {Raised(limit)}"), IsLimit: true));

    [DoesNotReturn]
    public static void MemoryLimit(SourceSpan span, string task) => Throw(new(
        "FJ065", span, Say($"the live tasks need more than 2 GiB{task}"),
        "join now and then, or use fewer names in a task", IsLimit: true));

    [DoesNotReturn]
    public static void AnalysisLimit(SourceSpan span, long limit) => Throw(new(
        "FJ066", span, Say($"the analysis executed more than {limit} instructions (--limit-analysis)"),
        Say($"use smaller parameters, or raise it with --limit-analysis {Raised(limit)}"), IsLimit: true));

    [DoesNotReturn]
    public static void TotalOverflow(SourceSpan span) => Throw(new(
        "FJ048", span, "the total of work, span or tasks does not fit in 64 bits", "use smaller parameters"));

    /// <summary>Words that tell in which task something went wrong.</summary>
    public static string In(Code code, ReadOnlySpan<long> arguments) =>
        " in " + BoundProgram.Label(code.Definition, arguments);

    [DoesNotReturn]
    private static void Throw(Diagnostic diagnostic) => throw new InputException(diagnostic);

    private static long Raised(long limit) => limit > long.MaxValue / 10 ? long.MaxValue : limit * 10;

    private static string Say(FormattableString text) => Invariant(text);
}
