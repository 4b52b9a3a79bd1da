using Rookery.Notation;
using static System.FormattableString;

namespace Rookery.Checking.Parsing;

/// <summary>What can be wrong with the lines of an algorithm: codes <c>DQ001</c> to <c>DQ019</c>.</summary>
internal static class AlgorithmErrors
{
    public static Diagnostic UnknownStatement(SourceSpan span, string found, string hint) => new(
        "DQ001", span,
        $"found '{Clip(found)}', expected NAME = VALUE or one of {string.Join(", ", AlgorithmWords.Statements)}",
        hint);

    public static Diagnostic UnknownTopLevel(SourceSpan span, string found, string hint) => new(
        "DQ002", span,
        $"found '{Clip(found)}', expected "
        + $"{string.Join(", ", AlgorithmWords.TopLevel[..^1])} or {AlgorithmWords.TopLevel[^1]}",
        hint);

    public static Diagnostic BlockMissing(SourceSpan span, string head) => new(
        "DQ003", span, $"expected an indented block after '{head}'", "indent what belongs to it by four blanks");

    public static Diagnostic BlockNotAllowed(SourceSpan span, string head) => new(
        "DQ004", span, $"this line is indented under '{Clip(head)}', which takes no block",
        "line it up with the line above");

    public static Diagnostic ElseWithoutIf(SourceSpan span) => new(
        "DQ005", span, "found 'else' without an 'if' before it", "line it up with the if that it belongs to");

    public static Diagnostic LineOutside(SourceSpan span, string word) => new(
        "DQ006", span, $"'{Clip(word)}' stands outside any operation", "indent it under an operation");

    public static Diagnostic ThreadExpected(SourceSpan span, string found) => new(
        "DQ007", span, $"found '{Clip(found)}', expected a thread", "write thread NAME: OPERATION(ARGUMENTS), ...");

    public static Diagnostic UnknownExpectation(SourceSpan span, string found) => new(
        "DQ008", span, $"found '{Clip(found)}', expected once, none lost, none twice or linearizable",
        "a litmus test asks exists CONDITION instead");

    public static Diagnostic UnknownObject(SourceSpan span, string found, string hint) => new(
        "DQ009", span, $"found '{Clip(found)}', expected deque, queue or stack", hint);

    public static Diagnostic ObjectArity(SourceSpan span, string signature, int given) => new(
        "DQ010", span, Invariant($"{signature} was given {given} operation{(given == 1 ? "" : "s")}"),
        "name them in this order; the same one may stand twice");

    /// <summary>A word as messages repeat it: not at any length.</summary>
    public static string Clip(string word) => word.Length <= 40 ? word : word[..40] + "...";
}
