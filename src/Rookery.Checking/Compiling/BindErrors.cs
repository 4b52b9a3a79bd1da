using Rookery.Checking.Parsing;
using Rookery.Notation;
using static System.FormattableString;

namespace Rookery.Checking.Compiling;

/// <summary>
/// What can be wrong when an algorithm meets the numbers of a scenario: <c>DQ060</c> to <c>DQ079</c>.
/// </summary>
internal static class BindErrors
{
    public static Diagnostic TooLarge(SourceSpan span, string what) => new(
        "DQ060", span, $"{what} is larger than a scenario can be", "make it smaller, or split it", IsLimit: true);

    public static Diagnostic ArraySize(SourceSpan span, string name, long size, string scenario) => new(
        "DQ061", span, Invariant($"'{AlgorithmErrors.Clip(name)}' has {size} elements{In(scenario)}"),
        Invariant($"an array has 1 to {AlgorithmLimits.PlacesMax} of them"));

    public static Diagnostic TooManyPlaces(SourceSpan span, long count, string scenario) => new(
        "DQ062", span, Invariant($"shared memory has {count} places{In(scenario)}, elements included"),
        Invariant($"at most {AlgorithmLimits.PlacesMax}: make arrays smaller"), IsLimit: true);

    public static Diagnostic ValueTooLarge(SourceSpan span, string scenario) => new(
        "DQ063", span, Invariant($"this value is beyond {AlgorithmLimits.ValueMax}{In(scenario)}"),
        "small numbers show the same");

    public static Diagnostic DivisionByZero(SourceSpan span, string scenario) => new(
        "DQ064", span, $"division by zero{In(scenario)}", "");

    public static Diagnostic TooManyLocals(SourceSpan span, string operation) => new(
        "DQ065", span,
        Invariant($"'{AlgorithmErrors.Clip(operation)}' has more than {AlgorithmLimits.LocalsMax} names of its own"),
        "use a name again, or split the operation", IsLimit: true);

    public static Diagnostic ShiftOutOfRange(SourceSpan span, long count, string scenario) => new(
        "DQ066", span, Invariant($"a shift by {count} places{In(scenario)}"), "it takes 0 to 31");

    public static Diagnostic IndexOutside(SourceSpan span, string name, long at, int length) => new(
        "DQ067", span, Invariant($"'{AlgorithmErrors.Clip(name)}' has {length} elements, and none is number {at}"),
        "the first one is 0");

    private static string In(string scenario) =>
        scenario.Length == 0 ? "" : $" in scenario \"{AlgorithmErrors.Clip(scenario)}\"";
}
