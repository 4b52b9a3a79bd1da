using System.Collections.Immutable;
using Rookery.Measuring;
using Rookery.Programs;
using Rookery.Simulation;

namespace Rookery.Json;

/// <summary>What <c>predict --json</c> prints.</summary>
internal static class PredictJson
{
    /// <summary>The object.</summary>
    public static string Of(BoundProgram program, Machine machine, ImmutableArray<Prediction> predictions) =>
        JsonText.Of(json =>
        {
            json.WriteString("program", program.Name);
            json.WriteNumbers("parameters", program.Parameters);
            json.WriteNumbers("machine", machine.ToCosts());
            json.WriteStartArray("predictions");
            foreach (Prediction prediction in predictions)
            {
                json.WriteStartObject();
                json.WriteNumber("simulatedNanoseconds", prediction.Simulated);
                json.WriteNumber("handOverNanoseconds", prediction.HandOver);
                json.WriteNumber("error", prediction.Error);
                json.WriteBoolean("hasProcessors", prediction.HasProcessors);
                MeasureJson.Write(json, prediction.Measured);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        });
}
