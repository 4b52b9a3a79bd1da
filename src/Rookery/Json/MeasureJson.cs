using System.Text.Json;
using Rookery.Measuring;
using Rookery.Programs;

namespace Rookery.Json;

/// <summary>What <c>measure --json</c> prints.</summary>
internal static class MeasureJson
{
    /// <summary>The object.</summary>
    public static string Of(BoundProgram program, MeasureSettings settings, Measurement measured) => JsonText.Of(json =>
    {
        json.WriteString("program", program.Name);
        json.WriteNumbers("parameters", program.Parameters);
        json.WriteString("on", settings.IsOnTasks ? "tasks" : "pool");
        Write(json, measured);
    });

    /// <summary>A measurement's numbers.</summary>
    public static void Write(Utf8JsonWriter json, Measurement measured)
    {
        json.WriteNumber("workers", measured.Workers);
        json.WriteNumber("processors", Environment.ProcessorCount);
        json.WriteNumber("tasks", measured.Tasks);
        json.WriteNumber("unitNanoseconds", measured.UnitNanoseconds);
        json.WriteNumber("workNanoseconds", measured.Work);
        json.WriteNumber("medianNanoseconds", measured.Median);
        json.WriteNumber("minNanoseconds", measured.Min);
        json.WriteNumber("maxNanoseconds", measured.Max);
        json.WriteStartArray("nanoseconds");
        foreach (long time in measured.Times)
            json.WriteNumberValue(time);
        json.WriteEndArray();
    }
}
