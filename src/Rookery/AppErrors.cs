using System.Globalization;
using Rookery.Notation;

namespace Rookery;

/// <summary>All that the command line itself can find wrong. Codes <c>AP001</c> and up are stable.</summary>
internal static class AppErrors
{
    public static Diagnostic PictureTooLarge(int width, int height, long most) => new(
        "AP001", default,
        string.Create(CultureInfo.InvariantCulture, $"A picture of {width} by {height} pixels is too large."),
        string.Create(CultureInfo.InvariantCulture, $"Make --size or --scale smaller: up to {most} pixels."), true);

    public static Diagnostic NoFile(string path, string nearest) => new(
        "AP002", default, $"There is no file '{path}'.", nearest.Length > 0 ? $"Did you mean {nearest}?" : "");

    public static Diagnostic IsFolder(string path) => new(
        "AP003", default, $"'{path}' is a folder; a file is needed.", "");

    public static Diagnostic NoFolder(string path) => new(
        "AP004", default, $"The folder for '{path}' does not exist.", "Make it first, or choose another.");

    public static Diagnostic FileTooLarge(string path, long most) => new(
        "AP005", default,
        string.Create(CultureInfo.InvariantCulture, $"'{path}' is larger than {most >> 20} MiB, the limit."),
        "Use a smaller file.", true);

    public static Diagnostic DataIsLink(string file) => new(
        "AP006", default, $"'{file}' is a link, or lies behind one; data is read from the program's own folder only.",
        "Copy the file into the folder.");

    public static Diagnostic BadEnding(string path, string what, IEnumerable<string> endings) => new(
        "AP007", default, $"{what} cannot be '{path}'.", $"Its name ends in {string.Join(" or ", endings)}.");

    public static Diagnostic UnknownOption(string option, string verb, string nearest) => new(
        "AP010", default, verb.Length > 0 ? $"'{verb}' has no option '{option}'." : $"There is no option '{option}'.",
        nearest.Length > 0 ? $"Did you mean {nearest}?" : "");

    public static Diagnostic UnknownVerb(string word, string nearest, IEnumerable<string> verbs) => new(
        "AP011", default, $"There is no command '{word}'.",
        nearest.Length > 0 ? $"Did you mean {nearest}?" : $"Commands are {string.Join(", ", verbs)}.");

    public static Diagnostic TooMany(string verb, string word) => new(
        "AP012", default, $"'{verb}' takes one file, and '{word}' is one too many.", "");

    public static Diagnostic MissingArgument(string verb, string argument) => new(
        "AP013", default, $"'{verb}' needs {argument}.", "");

    public static Diagnostic MissingValue(string option, string value) => new(
        "AP014", default, $"The option {option} needs a value: {option} {value}.", "");

    public static Diagnostic GivenTwice(string option) => new(
        "AP015", default, $"{option} is given more than once.", "Keep one of them.");

    public static Diagnostic BadUsage(string message) => new("AP016", default, message, "");

    public static Diagnostic BadNumber(string option, string text, long least, long most) => new(
        "AP017", default, $"{option} cannot be '{text}'.",
        string.Create(CultureInfo.InvariantCulture, $"It is a whole number from {least} to {most}."));

    public static Diagnostic BadPair(string option, string text) => new(
        "AP018", default, $"{option} cannot be '{text}'.", $"Write a name and a whole number, as in {option} name=50.");

    public static Diagnostic UnknownWord(string option, string word, IEnumerable<string> words) => new(
        "AP019", default, $"{option} cannot be '{word}'.",
        (Suggestion.Nearest(word, words) is { } nearest ? $"Did you mean {nearest}? " : "")
            + $"It is one of {string.Join(", ", words)}.");

    public static Diagnostic BadSteps(string text) => new(
        "AP020", default, $"--steps cannot be '{text}'.",
        "Write --steps alone for all, or a range such as --steps 20..40; put it after the file.");

    public static Diagnostic Exclusive(string one, string other, string why) => new(
        "AP021", default, $"{one} and {other} exclude one another: {why}.", "Leave one out.");

    public static Diagnostic BadSize(string text, double least, double most) => new(
        "AP022", default, $"--size cannot be '{text}'.",
        string.Create(
            CultureInfo.InvariantCulture,
            $"Write width and height in pixels, such as 1600x900, each from {least} to {most}."));

    public static Diagnostic BadScale(string text) => new(
        "AP023", default, $"--scale cannot be '{text}'.", "It is a number from 0.1 to 10, such as 2.");

    public static Diagnostic BadTextScale(string text) => new(
        "AP032", default, $"--text cannot be '{text}'.", "It is a number from 0.5 to 2, such as 0.8.");

    public static Diagnostic IsFile(string path) => new(
        "AP033", default, $"'{path}' is a file; the figures need a folder.", "Choose another name.");

    public static Diagnostic NoLessons(string folder) => new(
        "AP040", default, $"There is no lesson in '{folder}'.",
        "A lesson is a file that ends in .md and begins with a line '---' (docs/lessons.md).");

    public static Diagnostic NotOurFolder(string path) => new(
        "AP041", default,
            $"'{path}' holds files that were not published by this program, and it would be replaced as a whole.",
        "Choose a new folder, or empty this one.");

    public static Diagnostic MissingOut() => new(
        "AP042", default, "'publish' needs a folder to write to.", "Add --out FOLDER.");

    public static Diagnostic OutIsSource(string path) => new(
        "AP043", default, $"The folder '{path}' holds the lessons themselves, and publishing would replace it.",
        "Choose another folder for --out.");

    public static Diagnostic NoLessonAt(string path) => new(
        "AP044", default, $"There is no lesson or folder '{path}'.", "Give a lesson (.md) or a folder of lessons.");

    public static Diagnostic PortTaken(long port) => new(
        "AP045", default,
        string.Create(CultureInfo.InvariantCulture, $"Another program has the port {port}."),
        "Leave --port out: a free one is chosen.");

    public static Diagnostic NoSuchStep(long step, int most) => new(
        "AP024", default,
        string.Create(CultureInfo.InvariantCulture, $"There is no step {step}: the run has {most} steps."),
        string.Create(CultureInfo.InvariantCulture, $"Steps count from 0, so the last one is {most - 1}."));

    public static Diagnostic NotForTraces(string option) => new(
        "AP027", default, $"{option} is for programs: a trace is of a run that has been made already.",
        "Leave it out, or give the program.");

    public static Diagnostic CurveNeedsProgram() => new(
        "AP028", default, "A trace is one run, and a speed-up curve needs many.",
        "Give the program instead of the trace.");

    public static Diagnostic NoDemo(string path) => new(
        "AP029", default, $"The demo program is not there: {path}.", "Run a program of your own: run FILE.");

    public static Diagnostic NoScenario(string path, string name, IEnumerable<string> names) => new(
        "AP050", default, $"'{path}' has no scenario '{name}'.",
        Suggestion.Nearest(name, names) is { } nearest
            ? $"Did you mean '{nearest}'?" : $"It has {string.Join(", ", names.Select(one => $"'{one}'"))}.");

    public static Diagnostic NoWitness() => new(
        "AP051", default, "There is no execution to draw: nothing is broken, and nothing asked for can happen.",
        "Leave out --out, or check under a weaker memory model.");

    public static Diagnostic NotCalibrated() => new(
        "AP052", default, "This computer has not been calibrated yet.", "Run calibrate first; it takes some seconds.");

    public static Diagnostic OutOfMemory() => new(
        "AP030", default, "There is not enough memory for this.",
        "Make the program smaller, or leave out --trace, --steps and --figures, which keep every event.", true);

    public static Diagnostic Files(string message) => new("AP031", default, message, "");

    public static Diagnostic VaryOneOrTwo(int count) => new(
        "AP034", default,
        count == 0 ? "Nothing varies, so there is nothing to compare." : "More than two choices cannot vary at once.",
        "Write --vary once or twice, as in --vary victim=random,lowest.");

    public static Diagnostic ClaimNeedsTwo(int count) => new(
        "AP035", default,
        string.Create(CultureInfo.InvariantCulture, $"A claim is about two combinations, and these are {count}."),
        "Vary one choice with two levels: the claim is made of the second.");

    public static Diagnostic Needs(string option, string other) => new(
        "AP036", default, $"{option} needs {other} as well.", "");

    public static Diagnostic OtherJournal(string path) => new(
        "AP037", default, $"'{path}' has the runs of another comparison, or of an earlier version of these files.",
        "Delete it to begin anew, or choose another name for --data.");

    public static Diagnostic TooManySeries(int most) => new(
        "AP038", default,
        string.Create(CultureInfo.InvariantCulture,
        $"No figure can tell apart more than {most} levels of a second choice."),
        "Vary one of the two with fewer levels, or leave out --figure.");

    public static Diagnostic Defect(Exception defect, string place) => new(
        "AP099", default,
        $"This is a defect of Rookery, not of your input: {defect.GetType().Name} in {place}: {defect.Message}",
        "Please report it with the command and the files that you used.");
}
