using System.Text.Json;
using Rookery.Courses;
using Rookery.Lessons;
using Rookery.Lessons.Blocks;

namespace Rookery.Json;

/// <summary>What <c>publish --json</c> prints, and what <c>rookery.json</c> of a published course says.</summary>
internal static class CourseJson
{
    /// <summary>The contents of a course: pages, figures and numbers. Depends on nothing but the course.</summary>
    public static string Contents(CourseBuild build) => JsonText.Of(json =>
    {
        json.WriteNumber("format", 1);
        WriteContents(json, build);
    });

    /// <summary>What was done.</summary>
    public static string Of(
        CourseBuild build, string folder, bool isPublished, long labBytes, int computed, double seconds) =>
        JsonText.Of(json =>
        {
            json.WriteBoolean("published", isPublished);
            json.WriteString("out", folder);
            json.WriteNumber("labBytes", labBytes);
            json.WriteNumber("computed", computed);
            json.WriteNumber("seconds", Math.Round(seconds, 3));
            WriteContents(json, build);
            json.WriteStartArray("problems");
            foreach (Problem problem in build.Problems)
            {
                json.WriteStartObject();
                json.WriteString("file", problem.Source.Name);
                json.WriteNumber("line", problem.Diagnostic.Span.Line);
                json.WriteNumber("column", problem.Diagnostic.Span.Column);
                json.WriteString("code", problem.Diagnostic.Code);
                json.WriteString("what", problem.Diagnostic.What);
                json.WriteString("hint", problem.Diagnostic.Hint);
                json.WriteBoolean("missed", problem.IsMiss);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        });

    private static void WriteContents(Utf8JsonWriter json, CourseBuild build)
    {
        json.WriteStartArray("lessons");
        foreach (BuiltLesson lesson in build.Lessons)
        {
            json.WriteStartObject();
            json.WriteString("file", Path.GetFileName(lesson.Loaded.Path));
            json.WriteString("title", lesson.Loaded.Entry?.Lesson.Front.Title ?? "");
            json.WriteString("page", lesson.Loaded.Page);
            json.WriteStartArray("blocks");
            for (int i = 0; i < lesson.Results.Length; i++)
                WriteBlock(json, lesson.Loaded.Entry!.Lesson.Blocks[i], lesson.Results[i]);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteBlock(Utf8JsonWriter json, LessonBlock block, BlockResult result)
    {
        json.WriteStartObject();
        json.WriteString("kind", block.Word);
        json.WriteNumber("number", block.Place.Number);
        json.WriteString("name", block.Name);
        json.WriteString("made", result.MadeFrom);
        json.WriteStartArray("figures");
        foreach (BlockFigure figure in result.Figures)
            json.WriteStringValue(figure.Id);
        json.WriteEndArray();
        json.WriteStartObject("measures");
        foreach (MeasureValue measure in result.Measures)
        {
            json.WritePropertyName(measure.Name);
            if (measure.Denominator == "1")
                json.WriteRawValue(measure.Numerator);
            else if (measure.Denominator == "0")
                json.WriteNullValue();
            else
                json.WriteNumberValue(Quotient(measure));
        }

        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static double Quotient(MeasureValue measure) =>
        double.Parse(measure.Numerator, System.Globalization.CultureInfo.InvariantCulture)
        / double.Parse(measure.Denominator, System.Globalization.CultureInfo.InvariantCulture);
}
