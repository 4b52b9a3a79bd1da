using System.Globalization;
using Rookery.Notation;
using Rookery.Traces.Measuring;

namespace Rookery.Lab.Studies;

/// <summary>What can be wrong with a study besides what an experiment says itself.</summary>
internal static class StudyErrors
{
    public static Diagnostic NoSeeds(string text, int least, int most) => new(
        "LS001", default, $"'{text}' is no number of seeds.",
        string.Create(CultureInfo.InvariantCulture, $"Write a whole number from {least} to {most:N0}."));

    public static Diagnostic TooManyRuns(int runs, int most) => new(
        "LS002", default, string.Create(
        CultureInfo.InvariantCulture, $"These are {runs:N0} runs, more than the {most:N0} of a page."),
        "Use fewer values or fewer seeds, or the command line: rookery compare.", IsLimit: true);

    public static Diagnostic NoMeasure(string name) => new(
        "LS003", default, $"There is no measure '{name}'.",
        Suggestion.Hint(name, MeasureNames.All.Select(measure => measure.Name)));

    public static Diagnostic SameNeedsASize() => new(
        "LS004", default, "That two are the same can only be shown up to some size of effect.",
        "Say within how much, such as 5%.");

    public static Diagnostic TooManyTreatments(int treatments, int most) => new(
        "LS005", default, string.Create(
        CultureInfo.InvariantCulture, $"These are {treatments:N0} combinations, more than the {most:N0} of a page."),
        "Use fewer values, or the command line: rookery compare.", IsLimit: true);
}
