using static System.FormattableString;

namespace Rookery.Notation.Lines;

/// <summary>Everything that can be wrong with a text before its notation matters: codes <c>NT001</c> and up.</summary>
internal static class NotationErrors
{
    public static Diagnostic TextTooLong(int length) => new(
        "NT001", default, Say($"the text has {length} characters, at most {NotationLimits.CharactersMax} are read"),
        "split it: no program for a class is that long", IsLimit: true);

    public static Diagnostic TooManyLines(int count) => new(
        "NT002", default, Say($"the text has {count} lines, at most {NotationLimits.LinesMax} are read"),
        "split it: no program for a class is that long", IsLimit: true);

    public static Diagnostic TooManyTokens(SourceSpan span) => new(
        "NT003", span, Say($"this line has more than {NotationLimits.TokensMax} words and signs"),
        "split it with let, a part on each line", IsLimit: true);

    public static Diagnostic TooDeep(SourceSpan span) => new(
        "NT004", span,
        Say($"parentheses, prefix signs and conditions are nested more than {NotationLimits.NestingMax} deep"),
        "name the inner parts with let", IsLimit: true);

    public static Diagnostic BlocksTooDeep(SourceSpan span) => new(
        "NT005", span, Say($"blocks are nested more than {NotationLimits.BlocksMax} deep"),
        "move the inner part to a task of its own", IsLimit: true);

    public static Diagnostic TabInIndentation(SourceSpan span) => new(
        "NT006", span, "a tab in the indentation", "indent with blanks only, for example four for each level");

    public static Diagnostic UnexpectedIndent(SourceSpan span) => new(
        "NT007", span, "this line is indented, but nothing above it opens a block",
        "begin it in the first column");

    public static Diagnostic UnmatchedDedent(SourceSpan span, int indent, IEnumerable<int> open) => new(
        "NT008", span,
        Say($"this line is indented by {indent}, the blocks around it by {string.Join(", ", open)}"),
        "line it up with the block that it belongs to");

    public static Diagnostic UnknownCharacter(SourceSpan span, char c, string hint) => new(
        "NT009", span,
        char.IsControl(c) || char.IsSurrogate(c)
            ? Say($"unexpected character U+{(int)c:X4}")
            : $"unexpected character '{c}'",
        hint);

    public static Diagnostic UnclosedText(SourceSpan span) => new(
        "NT010", span, "this text has no closing quote on its line", "close it with \"");

    public static Diagnostic NumberTooLarge(SourceSpan span) => new(
        "NT011", span, "this number does not fit in 64 bits", "the largest is 9223372036854775807");

    public static Diagnostic DigitBeforeName(SourceSpan span) => new(
        "NT012", span, "a name cannot begin with a digit", "put the letters first, or a blank between the two");

    public static Diagnostic Unexpected(SourceSpan span, string found, string expected, string hint = "") => new(
        "NT013", span, $"found {found}, expected {expected}", hint);

    public static Diagnostic ChainedComparison(SourceSpan span) => new(
        "NT014", span, "comparisons cannot be chained", "write a < b and b < c");

    private static string Say(FormattableString text) => Invariant(text);
}
