using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using Rookery.Notation;
using Rookery.Simulation;

namespace Rookery.Measuring.Calibration;

/// <summary>What the operations cost on one computer, as measured.</summary>
/// <remarks>Immutable. Written as a JSON file; <see cref="Parse"/> reads it and any other that has the costs.</remarks>
public sealed record Calibration
{
    /// <summary>Every cost.</summary>
    public ImmutableArray<Cost> Costs { get; init; } = [];

    /// <summary>Processors that this process could use.</summary>
    public int Processors { get; init; }

    /// <summary>The machine for the simulator: whole nanoseconds; a slice of 3 ms is an assumption.</summary>
    public Machine ToMachine()
    {
        Machine machine = Machine.Ideal with { Name = "this-computer", TimeUnit = "ns", Slice = Machine.Typical.Slice };
        foreach (Cost cost in Costs)
            machine = machine.With(cost.Name, Whole(cost));
        return machine;
    }

    /// <summary>The file's text.</summary>
    public string ToJson()
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteNumber("rookery-machine", 1);
            json.WriteString("timeUnit", "ns");
            json.WriteNumber("processors", Processors);
            json.WriteStartObject("costs");
            foreach (Cost cost in Costs)
                json.WriteNumber(cost.Name, Whole(cost));
            json.WriteEndObject();
            json.WriteStartArray("measured");
            foreach (Cost cost in Costs)
            {
                json.WriteStartObject();
                json.WriteString("name", cost.Name);
                json.WriteNumber("median", Math.Round(cost.Median, 2));
                json.WriteNumber("low", Math.Round(cost.Low, 2));
                json.WriteNumber("high", Math.Round(cost.High, 2));
                json.WriteString("how", cost.How);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(bytes.ToArray()) + "\n";
    }

    /// <summary>Reads the machine in a file.</summary>
    /// <param name="path">What messages call it.</param>
    /// <param name="text">Its text.</param>
    /// <exception cref="InputException">It is none.</exception>
    public static Machine Parse(string path, string text)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(text);
            if (!document.RootElement.TryGetProperty("costs", out JsonElement costs))
                throw new InputException(MeasuringErrors.BadMachine(path, "it has no \"costs\"."));
            Machine machine = Machine.Ideal with
            {
                Name = Path.GetFileNameWithoutExtension(path),
                TimeUnit = "ns",
                Slice = Machine.Typical.Slice,
            };
            foreach (JsonProperty cost in costs.EnumerateObject())
            {
                if (!cost.Value.TryGetInt64(out long value))
                    throw new InputException(MeasuringErrors.BadMachine(path, $"{cost.Name} is no whole number."));
                machine = machine.With(cost.Name, value);
            }

            return machine;
        }
        catch (Exception wrong) when (wrong is JsonException or InvalidOperationException)
        {
            throw new InputException(MeasuringErrors.BadMachine(path, wrong.Message));
        }
    }

    private static long Whole(Cost cost) =>
        Math.Max(cost.Name == "probe" ? 1 : 0, (long)Math.Round(cost.Median, MidpointRounding.AwayFromZero));
}
