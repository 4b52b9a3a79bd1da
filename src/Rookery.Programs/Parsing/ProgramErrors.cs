using Rookery.Notation;

namespace Rookery.Programs.Parsing;

/// <summary>What can be wrong with the lines of a program: codes <c>FJ001</c> to <c>FJ009</c>.</summary>
internal static class ProgramErrors
{
    public static Diagnostic UnknownStatement(SourceSpan span, string found, string hint) => new(
        "FJ001", span,
        $"found '{Clip(found)}', expected a statement: {string.Join(", ", ProgramWords.Statements)}", hint);

    public static Diagnostic UnknownTopLevel(SourceSpan span, string found, string hint) => new(
        "FJ002", span,
        $"found '{Clip(found)}', expected "
        + $"{string.Join(", ", ProgramWords.TopLevel[..^1])} or {ProgramWords.TopLevel[^1]}",
        hint);

    public static Diagnostic BlockMissing(SourceSpan span, string head) => new(
        "FJ003", span, $"expected an indented block after '{head}'", "indent what belongs to it by four blanks");

    public static Diagnostic BlockNotAllowed(SourceSpan span, string head) => new(
        "FJ004", span, $"this line is indented under '{head}', which takes no block",
        "line it up with the line above");

    public static Diagnostic ElseWithoutIf(SourceSpan span) => new(
        "FJ005", span, "found 'else' without an 'if' before it", "line it up with the if that it belongs to");

    public static Diagnostic CallWithoutWord(SourceSpan span, string name) => new(
        "FJ006", span, $"found '{Clip(name)}(', expected a statement",
        $"write fork {Clip(name)}(...) to let it run in parallel, or call {Clip(name)}(...) to run it in place");

    public static Diagnostic LetMissing(SourceSpan span, string name) => new(
        "FJ007", span, $"found '{Clip(name)} =', expected a statement", $"write let {Clip(name)} = ...");

    public static Diagnostic LineOutsideTask(SourceSpan span, string word) => new(
        "FJ008", span, $"'{word}' stands outside any task", "indent it under a task");

    /// <summary>A word as messages repeat it: not at any length.</summary>
    public static string Clip(string word) => word.Length <= 40 ? word : word[..40] + "...";
}
