using Rookery.Checking.Parsing;
using Rookery.Checking.Syntax;
using Rookery.Notation;
using static System.FormattableString;

namespace Rookery.Checking.Naming;

/// <summary>What can be wrong with an algorithm whose lines are right: codes <c>DQ020</c> to <c>DQ059</c>.</summary>
internal static class NameErrors
{
    public static Diagnostic UnknownName(SourceSpan span, string name, string hint) => new(
        "DQ020", span, $"unknown name '{Clip(name)}'", hint);

    public static Diagnostic Duplicate(SourceSpan span, string name, string what, int line) => new(
        "DQ021", span, Invariant($"'{Clip(name)}' is already {what} (line {line})"), "choose another name");

    public static Diagnostic TwoAccesses(SourceSpan span, string first, string second) => new(
        "DQ022", span,
        $"this line makes two shared accesses, {Clip(first)} and {Clip(second)}; other threads can step in between",
        "one step is one access: put the first into a let on a line of its own");

    public static Diagnostic ConditionalAccess(SourceSpan span, string name) => new(
        "DQ023", span, $"whether '{Clip(name)}' is accessed here depends on the rest of the line",
        "put the access on a line of its own, under an if where it depends on something");

    public static Diagnostic NotAnArray(SourceSpan span, string name) => new(
        "DQ024", span, $"'{Clip(name)}' is no array, so it has no elements",
        $"write {Clip(name)} alone, or declare shared {Clip(name)}[SIZE]");

    public static Diagnostic ArrayAlone(SourceSpan span, string name) => new(
        "DQ025", span, $"'{Clip(name)}' is an array, and one access reaches one element",
        $"write {Clip(name)}[INDEX]");

    public static Diagnostic NotShared(SourceSpan span, string name, string what) => new(
        "DQ026", span, $"'{Clip(name)}' is {what}, expected shared memory",
        "declare it with shared, outside operations");

    public static Diagnostic StoreToLocal(NameSyntax name) => new(
        "DQ027", name.Span, $"'{Clip(name.Text)}' is a name of this operation's own",
        $"write let {Clip(name.Text)} = ... to give it a new value");

    public static Diagnostic LockAccessed(SourceSpan span, string name, int line) => new(
        "DQ028", span, Invariant($"'{Clip(name)}' is a lock (line {line}), which is only locked and unlocked"),
        "use another shared name for data");

    public static Diagnostic LockArray(NameSyntax name) => new(
        "DQ029", name.Span, $"'{Clip(name.Text)}' is an array and cannot be a lock", "declare one shared name a lock");

    public static Diagnostic OrderWithoutAccess(SourceSpan span, string order) => new(
        "DQ030", span, $"'{order}' stands on a line without a shared access", "leave it out");

    public static Diagnostic WrongOrder(SourceSpan span, string order, string access, string allowed) => new(
        "DQ031", span, $"{access} cannot be '{order}'", allowed);

    public static Diagnostic UnknownFunction(SourceSpan span, string name, string hint) => new(
        "DQ032", span, $"unknown function '{Clip(name)}'", hint);

    public static Diagnostic FunctionArity(SourceSpan span, string signature, int given) => new(
        "DQ033", span, Invariant($"{signature} was given {Count(given, "argument")}"), $"write {signature}");

    public static Diagnostic PlaceExpected(SourceSpan span, string function) => new(
        "DQ034", span, $"the first argument of {function} must be a shared place", "such as top, or item[i]");

    public static Diagnostic UnknownOperation(NameSyntax name, string hint) => new(
        "DQ035", name.Span, $"unknown operation '{Clip(name.Text)}'", hint);

    public static Diagnostic OperationArity(NameSyntax name, int given, OperationSyntax operation) => new(
        "DQ036", name.Span,
        Invariant($"'{Clip(name.Text)}' takes {Count(operation.Parameters.Length, "argument")}, {given} given"),
        Invariant($"it is defined in line {operation.Name.Span.Line}"));

    public static Diagnostic NoScenario() => new(
        "DQ037", default, "the file has no scenario, so there is nothing to check",
        "add scenario \"NAME\" with lines such as thread owner: push(1), pop()");

    public static Diagnostic NoThread(ScenarioSyntax scenario) => new(
        "DQ038", scenario.Span, $"scenario \"{Clip(scenario.Name)}\" has no threads",
        "add lines such as thread owner: push(1), pop()");

    public static Diagnostic TooMany(SourceSpan span, string what, int most) => new(
        "DQ039", span, Invariant($"more than {most} {what}"), "a small scenario shows the same; shrink it",
        IsLimit: true);

    public static Diagnostic UnknownParameter(NameSyntax name, string hint) => new(
        "DQ040", name.Span, $"the file has no parameter '{Clip(name.Text)}'", hint);

    public static Diagnostic OutOfRange(SourceSpan span, string name, long value, ParameterSyntax parameter) => new(
        "DQ041", span,
        Invariant($"{Clip(name)} = {value} is out of range, it takes {parameter.Min} to {parameter.Max}"),
        "both ends are included");

    public static Diagnostic SecondOf(SourceSpan span, string word, int line) => new(
        "DQ042", span, Invariant($"a second {word} line, the first is line {line}"), "keep one of them");

    public static Diagnostic ExpectAndExists(SourceSpan span) => new(
        "DQ043", span, "a file either expects something of its algorithm or asks whether an outcome exists",
        "put the question into a file of its own");

    public static Diagnostic DrainMissing(SourceSpan span) => new(
        "DQ044", span, "whether something is lost shows only when the deque has been emptied",
        "add a line such as drain pop()");

    public static Diagnostic UnknownWord(SourceSpan span, string name, string hint) => new(
        "DQ045", span, $"unknown result '{Clip(name)}'", hint);

    public static Diagnostic AssignsArgument(NameSyntax name) => new(
        "DQ046", name.Span, $"'{Clip(name.Text)}' is an argument, and arguments do not change",
        "use another name");

    public static Diagnostic MayMissForeign(NameSyntax name) => new(
        "DQ047", name.Span, $"'{Clip(name.Text)}' is none of the operations named before", "name one of those");

    public static Diagnostic BothObservedAndLock(NameSyntax name) => new(
        "DQ048", name.Span, $"'{Clip(name.Text)}' is a lock and has no value to observe", "leave it out");

    public static Diagnostic DeclaredBelow(SourceSpan span, string name, int line) => new(
        "DQ049", span, Invariant($"'{Clip(name)}' is declared below, in line {line}"), "move its line up");

    public static Diagnostic NoResult(SourceSpan span, string name, string hint) => new(
        "DQ050", span, $"no thread returns '{Clip(name)}'", hint);

    public static Diagnostic AccessOutside(SourceSpan span, string name) => new(
        "DQ051", span, $"'{Clip(name)}' is shared memory, expected a number known beforehand",
        "use numbers, params and consts here");

    public static Diagnostic LockInExpression(SourceSpan span, string name) => new(
        "DQ052", span, $"'{Clip(name)}' is locked somewhere, but it is also used as a number",
        "use another shared name for the lock");

    public static Diagnostic AmbiguousResult(SourceSpan span, string name) => new(
        "DQ053", span, $"'{Clip(name)}' is returned at different places, so it names no single result",
        "give the results different names");

    private static string Count(int count, string what) => Invariant($"{count} {what}{(count == 1 ? "" : "s")}");

    private static string Clip(string name) => AlgorithmErrors.Clip(name);
}
