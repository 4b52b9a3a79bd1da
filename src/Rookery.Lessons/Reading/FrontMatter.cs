using System.Collections.Immutable;
using Rookery.Lessons.Yaml;
using Rookery.Notation;

namespace Rookery.Lessons.Reading;

/// <summary>What a lesson says of itself before its text.</summary>
/// <param name="Title">Its title.</param>
/// <param name="Audience">For whom it is; empty when it does not say.</param>
/// <param name="Minutes">How long it takes in class; 0 when it does not say.</param>
/// <param name="Summary">A sentence for the list of lessons; empty when it does not say.</param>
/// <param name="Objectives">What its readers can do afterwards.</param>
public sealed record FrontMatter(
    string Title, string Audience, int Minutes, string Summary, ImmutableArray<string> Objectives)
{
    private const int MinutesMax = 600;
    private const int ObjectivesMax = 12;

    /// <summary>Whether a text begins as a lesson does.</summary>
    /// <param name="text">All of it.</param>
    public static bool IsAtTopOf(string text) =>
        text.StartsWith("---\n", StringComparison.Ordinal) || text.StartsWith("---\r", StringComparison.Ordinal);

    /// <summary>Reads it.</summary>
    /// <param name="source">The lesson.</param>
    /// <param name="errors">What is wrong.</param>
    /// <param name="lines">Number of lines that it takes, both '---' included; 0 when there is none.</param>
    internal static FrontMatter Read(SourceText source, DiagnosticList errors, out int lines)
    {
        lines = 0;
        var nothing = new FrontMatter(source.Name, "", 0, "", []);
        if (source.Line(1).TrimEnd() != "---")
        {
            errors.Add(LessonErrors.NoFrontMatter());
            return nothing;
        }

        int end = 2;
        while (end <= source.LineCount && source.Line(end).TrimEnd() != "---")
            end++;
        if (end > source.LineCount)
        {
            errors.Add(LessonErrors.FrontMatterOpen());
            return nothing;
        }

        lines = end;
        string inside = string.Join('\n', Enumerable.Range(2, end - 2).Select(source.Line));
        return YamlReader.Read(inside, 1, 0, errors) is { } map ? Of(map, errors) : nothing;
    }

    private static FrontMatter Of(YamlMap map, DiagnosticList errors)
    {
        var fields = new FieldReader("The front matter", map, errors);
        var read = new FrontMatter(
            fields.TakeNeeded("title", "Fork and join").Text,
            fields.TakeText("audience")?.Text ?? "",
            (int)fields.TakeWhole("minutes", 1, MinutesMax, 0),
            fields.TakeText("summary")?.Text ?? "",
            [.. fields.TakeTexts("objectives", ObjectivesMax).Select(text => text.Text)]);
        fields.RefuseOthers();
        return read;
    }
}
