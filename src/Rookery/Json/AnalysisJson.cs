using Rookery.Programs;
using Rookery.Traces.Measuring;

namespace Rookery.Json;

/// <summary>What <c>analyse --json</c> prints.</summary>
internal static class AnalysisJson
{
    /// <summary>The object.</summary>
    public static string Of(Analysis analysis) => JsonText.Of(json =>
    {
        json.WriteNumber("tasks", analysis.Tasks);
        json.WriteNumber("work", analysis.Work);
        json.WriteNumber("span", analysis.Span);
        json.WriteRatio("parallelism", new Ratio(analysis.Work, analysis.Span));
        json.WriteNumber("deepest", analysis.Deepest);
    });
}
