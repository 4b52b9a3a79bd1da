using Rookery.Notation;
using Rookery.Programs.Parsing;
using Rookery.Programs.Syntax;
using static System.FormattableString;

namespace Rookery.Programs.Compiling;

/// <summary>What can be wrong with what a program is given: codes <c>FJ030</c> to <c>FJ039</c>.</summary>
internal static class BindErrors
{
    public static Diagnostic OutOfRange(ParameterDeclaration parameter, long value) => new(
        "FJ030", parameter.Span,
        Say($"{parameter.Name} = {value} is out of range, it takes {parameter.Min} to {parameter.Max}"),
        "choose a value within the range, both ends included");

    public static Diagnostic UnknownParameter(string name, IReadOnlyList<string> known) => new(
        "FJ031", default, $"the program has no parameter '{ProgramErrors.Clip(name)}'",
        Suggestion.Hint(name, known) is { Length: > 0 } hint ? hint
        : known.Count == 0 ? "it has none at all"
        : $"it has {ProgramErrors.Clip(string.Join(", ", known))}");

    public static Diagnostic FileMissing(DataDeclaration data) => new(
        "FJ032", data.FileSpan, $"there is no file '{ProgramErrors.Clip(data.File)}' beside the program",
        "the path is relative to the program's own folder");

    public static Diagnostic ColumnMissing(DataDeclaration data, IReadOnlyList<string> known) => new(
        "FJ033", data.ColumnSpan,
        $"'{ProgramErrors.Clip(data.File)}' has no column '{ProgramErrors.Clip(data.Column)}'",
        Suggestion.Hint(data.Column, known) is { Length: > 0 } hint ? hint
        : known.Count == 0 ? "it is empty"
        : $"its first row names {ProgramErrors.Clip(string.Join(", ", known))}");

    public static Diagnostic NotAnInteger(DataDeclaration data, long line, string found) => new(
        "FJ034", data.ColumnSpan,
        Say($"'{ProgramErrors.Clip(data.File)}' line {line}: column {ProgramErrors.Clip(data.Column)} ")
        + $"holds '{ProgramErrors.Clip(Printable(found))}', expected an integer of 64 bits",
        "times and costs are whole numbers: choose a smaller unit");

    public static Diagnostic RowTooShort(DataDeclaration data, long line) => new(
        "FJ034", data.ColumnSpan,
        Say($"'{ProgramErrors.Clip(data.File)}' line {line} has no column {ProgramErrors.Clip(data.Column)}"),
        "every row needs as many columns as the first");

    public static Diagnostic TooManyRows(DataDeclaration data, int limit) => new(
        "FJ035", data.FileSpan, Say($"'{ProgramErrors.Clip(data.File)}' has more than {limit} rows"),
        "use a part of it", IsLimit: true);

    public static Diagnostic Malformed(DataDeclaration data, long line) => new(
        "FJ037", data.FileSpan,
        Say($"'{ProgramErrors.Clip(data.File)}' line {line} is not a row of comma-separated values"),
        "a field with quotes in it is quoted itself, and its quotes are doubled; a row has at most a million bytes");

    public static Diagnostic TotalTooLarge(DataDeclaration data) => new(
        "FJ038", data.ColumnSpan,
        $"the values of column {ProgramErrors.Clip(data.Column)} add up to more than 64 bits hold",
        "choose a larger unit");

    private static string Printable(string text) =>
        string.Concat(text.Take(60).Select(c => char.IsControl(c) ? ' ' : c));

    private static string Say(FormattableString text) => Invariant(text);
}
