using System.Globalization;
using Rookery.Notation;

namespace Rookery.Lessons;

/// <summary>All that can be wrong with a lesson, in one place. Codes <c>LS001</c> and up are stable.</summary>
internal static class LessonErrors
{
    public static Diagnostic TooLong(long most) => new(
        "LS001", default, Text($"The lesson is longer than {most} characters, the limit on a lesson."),
        "Split it into several.", true);

    public static Diagnostic NoFrontMatter() => new(
        "LS002", new(1, 1, 1), "A lesson begins with front matter: a line '---', fields, and another line '---'.",
        "Write at least 'title: …' between two lines '---' at the very top.");

    public static Diagnostic FrontMatterOpen() => new(
        "LS003", new(1, 1, 3), "The front matter has no second line '---'.", "Close it before the text begins.");

    public static Diagnostic BadYaml(SourceSpan span, string what) => new(
        "LS004", span, $"This is not readable as fields: {what}", "Write 'field: value' on each line.");

    public static Diagnostic YamlFeature(SourceSpan span, string feature) => new(
        "LS005", span, $"{feature} are not used in lessons.", "Write the value out where it is needed.");

    public static Diagnostic YamlTooLarge(SourceSpan span, string limit) => new(
        "LS006", span, $"The block {limit}.", "Make it smaller.", true);

    public static Diagnostic UnknownField(SourceSpan span, string field, string where, IEnumerable<string> known) =>
        new(
        "LS007", span, $"{where} has no field '{Shown(field)}'.", Guess(field, known, "Fields are"));

    public static Diagnostic FieldTwice(SourceSpan span, string field) => new(
        "LS008", span, $"The field '{Shown(field)}' is given twice.", "Keep one of them.");

    public static Diagnostic MissingField(SourceSpan span, string field, string where, string example) => new(
        "LS009", span, $"{where} needs the field '{field}'.", $"Write '{field}: {example}'.");

    public static Diagnostic WrongKind(SourceSpan span, string field, string expected) => new(
        "LS010", span, $"The field '{field}' is {expected}.", "");

    public static Diagnostic UnknownWord(SourceSpan span, string field, string word, IEnumerable<string> known) => new(
        "LS011", span, $"'{Shown(word)}' is no value of '{field}'.", Guess(word, known, "It is one of"));

    public static Diagnostic BadNumber(SourceSpan span, string field, string text, long least, long most) => new(
        "LS012", span, $"The field '{field}' cannot be '{Shown(text)}'.",
        Text($"It is a whole number from {least} to {most}."));

    public static Diagnostic BadFileName(SourceSpan span, string name) => new(
        "LS013", span, $"'{Shown(name)}' does not lie in the lesson's folder.",
        "Name a file of that folder or of one below it, with / between folders and no '..'.");

    public static Diagnostic NoFile(SourceSpan span, string name, IEnumerable<string> known) => new(
        "LS014", span, $"The lesson's folder has no file '{Shown(name)}'.",
        Suggestion.Nearest(name, known) is { } nearest ? $"Did you mean {nearest}?" : "Files are named as on disk.");

    public static Diagnostic BadImage(SourceSpan span, string name) => new(
        "LS015", span, $"'{Shown(name)}' is no picture that a page shows.",
        "Use a .png, .jpg, .gif, .webp or .svg file of the lesson's folder.");

    public static Diagnostic ImageTooLarge(SourceSpan span, string name, int most) => new(
        "LS016", span, Text($"'{Shown(name)}' is larger than {most >> 20} MiB, the limit on pictures."),
        "Make it smaller: a page need not load so much.", true);

    public static Diagnostic UnknownBlock(SourceSpan span, string word, string nearest) => new(
        "LS017", span, $"There is no block '{Shown(word)}'.", $"Did you mean {nearest}?");

    public static Diagnostic TooManyBlocks(SourceSpan span, int most) => new(
        "LS018", span, Text($"The lesson has more than {most} blocks, the limit."), "Split the lesson.", true);

    public static Diagnostic TooDeep() => new(
        "LS019", default, "Quotes or lists lie too deep inside one another.", "Write it flatter.", true);

    public static Diagnostic TooManyItems(SourceSpan span, string field, int most) => new(
        "LS020", span, Text($"The field '{field}' has more than {most} entries, the limit."), "Leave some out.", true);

    public static Diagnostic BadName(SourceSpan span, string name) => new(
        "LS021", span, $"'{Shown(name)}' cannot be a name.", "A name is a letter, then letters and digits.");

    public static Diagnostic NameTaken(SourceSpan span, string name) => new(
        "LS022", span, $"Another block of this lesson is called '{name}' already, or it is the name of a measure.",
        "Choose another.");

    public static Diagnostic BadFormula(SourceSpan span, string what) => new(
        "LS030", span, what, "Formulas use measures, numbers, + - * /, comparisons, and, or, not, min, max, abs.");

    public static Diagnostic UnknownMeasure(SourceSpan span, string name, IEnumerable<string> known) => new(
        "LS031", span, $"There is no measure '{Shown(name)}'.",
        Suggestion.Nearest(name, known) is { } nearest
            ? $"Did you mean {nearest}?"
            : "docs/measures.md lists them; write NAME.measure for that of a named exhibit.");

    public static Diagnostic NoValue(SourceSpan span, string name) => new(
        "LS032", span, $"'{name}' has no value in this run.",
            "Nothing of the kind happened, so a ratio divides by zero.");

    public static Diagnostic DividesByZero(SourceSpan span, string text) => new(
        "LS033", span, $"'{Shown(text)}' divides by zero.", "Change the formula or the run.");

    public static Diagnostic NotCondition(SourceSpan span, string text) => new(
        "LS034", span, $"'{Shown(text)}' is a number and not a condition.", "Compare it: steals < 30.");

    public static Diagnostic NotNumber(SourceSpan span, string text) => new(
        "LS035", span, $"'{Shown(text)}' is a condition and not a number.", "Print a number: {= steals }.");

    public static Diagnostic NothingAbove(SourceSpan span, string text) => new(
        "LS036", span, $"'{Shown(text)}' stands above every exhibit, so it has no run to speak of.",
        "Move it below one, or name one: {= name.steals }.");

    public static Diagnostic BadFormat(SourceSpan span, string format) => new(
        "LS037", span, $"There is no format '{Shown(format)}'.",
        "Write 'as percent', 'as words', 'as plain', or a number of decimals from 0 to 9, as in {= speedup as 1 }.");

    public static Diagnostic OtherVerdict(SourceSpan span, string expected, string found, string reason) => new(
        "LS045", span, $"The lesson says that this claim is {expected}, and the experiment finds it {found}: {reason}",
        "Change the lesson, or the experiment.");

    public static Diagnostic NoScenario(SourceSpan span, string file, string asked, IEnumerable<string> known) => new(
        "LS046", span, $"'{Shown(file)}' has no scenario '{Shown(asked)}'.", Guess(asked, known, "It has"));

    public static Diagnostic NoAlgorithm(SourceSpan span) => new(
        "LS047", span, "The check needs one of the fields 'algorithm' and 'text'.",
        "Write 'algorithm: deque.dq', or 'text: |' and the algorithm itself below it, indented.");

    public static Diagnostic AlgorithmWrong(SourceSpan span, string name) => new(
        "LS048", span, $"The algorithm '{Shown(name)}' of this check cannot be read.", "What is wrong stands below.");

    public static Diagnostic TooManyChecks(SourceSpan span, int most) => new(
        "LS049", span, Text($"The check asks for more than {most} answers, the limit: files, times scenarios, times ")
        + "memory models.", "Split it.", true);

    public static Diagnostic OutOfBudget(SourceSpan span, string what, string shrink) => new(
        "LS050", span, what, $"{shrink} A lesson that means to show this writes 'verdict = outOfBudget' in 'expect'.",
        true);

    public static Diagnostic WordCompared(SourceSpan span, string text) => new(
        "LS051", span, $"'{Shown(text)}' compares a word with something else.",
        "A word is compared with a word, by = or !=: verdict = broken.");

    public static Diagnostic NotRecorded(SourceSpan span, string view) => new(
        "LS052", span, $"A recording does not show '{view}': it is one run, and its program is not run again.",
        "Use an exhibit with 'program' for it.");

    public static Diagnostic Unlawful(SourceSpan span, string file, long findings, string first) => new(
        "LS053", span, Text($"The recording '{Shown(file)}' breaks rules in {findings} places. The first: {first}"),
        "'rookery audit' lists them all.");

    public static Diagnostic Missed(SourceSpan span, string condition, string numbers) => new(
        "LS040", span, $"The run does not meet '{Shown(condition)}': {numbers}.",
        "Change the run, or say what it shows.");

    public static Diagnostic Inside(SourceSpan span, string what, string hint, bool isLimit) => new(
        "LS041", span, what, hint, isLimit);

    public static Diagnostic ProgramWrong(SourceSpan span, string program) => new(
        "LS042", span, $"The program '{Shown(program)}' of this exhibit cannot be run.", "What is wrong stands below.");

    public static Diagnostic TooManyWorkers(SourceSpan span, int most) => new(
        "LS043", span, Text($"A run in a lesson has at most {most} workers."), "Use fewer.", true);

    public static Diagnostic BadSteps(SourceSpan span, string text) => new(
        "LS044", span, $"The field 'steps' cannot be '{Shown(text)}'.",
        "Write a range such as 100..400: the steps that the player carries.");

    private static string Guess(string word, IEnumerable<string> known, string lead)
    {
        string[] words = [.. known];
        string list = $"{lead} {string.Join(", ", words)}.";
        return Suggestion.Nearest(word, words) is { } nearest ? $"Did you mean {nearest}? {list}" : list;
    }

    private static string Shown(string text)
    {
        string line = string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c));
        return line.Length <= 80 ? line : $"{line.AsSpan(0, 80)}…";
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
