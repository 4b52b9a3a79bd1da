using Rookery.Notation;
using Rookery.Programs.Parsing;
using Rookery.Programs.Syntax;
using static System.FormattableString;

namespace Rookery.Programs.Checking;

/// <summary>What can be wrong with a program whose lines are right: codes <c>FJ010</c> to <c>FJ029</c>.</summary>
internal static class CheckErrors
{
    public static Diagnostic StartMissing() => new(
        "FJ010", default, "the program has no start line", "end it with start TASK(ARGUMENTS)");

    public static Diagnostic SecondStart(SourceSpan span, int firstLine) => new(
        "FJ011", span, Say($"a second start line, the first is line {firstLine}"), "keep one of them");

    public static Diagnostic UnknownName(SourceSpan span, string name, string hint) => new(
        "FJ012", span, $"unknown name '{Clip(name)}'", hint);

    public static Diagnostic UnknownTask(NameSyntax name, string hint) => new(
        "FJ013", name.Span, $"unknown task '{Clip(name.Text)}'", hint);

    public static Diagnostic UnknownFunction(SourceSpan span, string name, string hint) => new(
        "FJ014", span, $"unknown function '{Clip(name)}'", hint);

    public static Diagnostic TaskArity(NameSyntax name, int given, TaskSyntax task) => new(
        "FJ015", name.Span,
        Say($"'{Clip(name.Text)}' takes {Count(task.Parameters.Length, "argument")}, {given} given"),
        Say($"it is defined in line {task.Name.Span.Line}"));

    public static Diagnostic FunctionArity(SourceSpan span, string signature, int given) => new(
        "FJ016", span, Say($"{signature} was given {Count(given, "argument")}"), $"write {signature}");

    public static Diagnostic Duplicate(SourceSpan span, string name, string what, int line) => new(
        "FJ017", span, Say($"'{Clip(name)}' is already {what} (line {line})"), "choose another name");

    public static Diagnostic NotData(SourceSpan span, string name, string what) => new(
        "FJ018", span, $"'{Clip(name)}' is {what}, expected data", "only data lines make rows and sums");

    public static Diagnostic DataAsNumber(SourceSpan span, string name) => new(
        "FJ019", span, $"'{Clip(name)}' is data, expected a number",
        $"write {Clip(name)}[i], len({Clip(name)}) or sum({Clip(name)}, lo, hi)");

    public static Diagnostic DataExpected(SourceSpan span, string function) => new(
        "FJ018", span, $"the first argument of {function} must be the name of data",
        "only data lines make rows and sums");

    public static Diagnostic Captured(NameSyntax name, int line) => new(
        "FJ020", name.Span, Say($"'{Clip(name.Text)}' belongs to the task around this parallel loop (line {line})"),
        "the loop's body runs in tasks of its own with copies of it, so a new value could not get back; "
        + "use another name");

    public static Diagnostic DefaultOutOfRange(ParameterDeclaration parameter) => new(
        "FJ021", parameter.DefaultSpan,
        Say($"the default {parameter.Default} is outside {parameter.Min}..{parameter.Max}"),
        "both ends are included");

    public static Diagnostic EmptyRange(ParameterDeclaration parameter) => new(
        "FJ022", parameter.Span, Say($"no value is in {parameter.Min}..{parameter.Max}"),
        "the smaller number comes first");

    public static Diagnostic PathLeaves(DataDeclaration data, string reason) => new(
        "FJ023", data.FileSpan, $"'{Clip(data.File)}' {reason}",
        "data files are named relative to the program's folder and lie inside it, with / between folders");

    public static Diagnostic DeclaredBelow(SourceSpan span, string name, int line) => new(
        "FJ024", span, Say($"'{Clip(name)}' is declared below, in line {line}"), "move its line up");

    public static Diagnostic SetsGlobal(NameSyntax name, string what, int line) => new(
        "FJ017", name.Span, Say($"'{Clip(name.Text)}' is already {what} (line {line})"),
        "choose another name: the program's own values do not change while it runs");

    private static string Count(int count, string what) => Say($"{count} {what}{(count == 1 ? "" : "s")}");

    private static string Clip(string name) => ProgramErrors.Clip(name);

    private static string Say(FormattableString text) => Invariant(text);
}
