using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Rookery.Traces.Measuring;

namespace Rookery.Json;

/// <summary>Writes one JSON object, keys in the order in which they are said: the form of docs/json.md.</summary>
/// <remarks>Whole numbers are exact; ratios are the nearest double, or null where they have no value.</remarks>
internal static class JsonText
{
    /// <summary>The object's text, ended by a line feed.</summary>
    public static string Of(Action<Utf8JsonWriter> write) => Text(json =>
    {
        json.WriteStartObject();
        write(json);
        json.WriteEndObject();
    });

    /// <summary>The text of a list, ended by a line feed.</summary>
    public static string ArrayOf(Action<Utf8JsonWriter> write) => Text(json =>
    {
        json.WriteStartArray();
        write(json);
        json.WriteEndArray();
    });

    private static string Text(Action<Utf8JsonWriter> write)
    {
        using var bytes = new MemoryStream();
        var options = new JsonWriterOptions
        {
            Indented = true,
            NewLine = "\n",

            // The text goes to a terminal or a file, never into a page: a label's letters stay letters.
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        };
        using (var writer = new Utf8JsonWriter(bytes, options))
        {
            write(writer);
        }

        return Encoding.UTF8.GetString(bytes.GetBuffer(), 0, (int)bytes.Length) + "\n";
    }

    /// <summary>A ratio, or null.</summary>
    public static void WriteRatio(this Utf8JsonWriter json, string name, Ratio value)
    {
        if (value.HasValue)
            json.WriteNumber(name, value.ToDouble());
        else
            json.WriteNull(name);
    }

    /// <summary>A whole number of any size.</summary>
    public static void WriteWhole(this Utf8JsonWriter json, string name, Int128 value)
    {
        json.WritePropertyName(name);
        json.WriteRawValue(value.ToString(System.Globalization.CultureInfo.InvariantCulture));
    }

    /// <summary>An object of whole numbers by name.</summary>
    public static void WriteNumbers(
        this Utf8JsonWriter json, string name, IEnumerable<KeyValuePair<string, long>> values)
    {
        json.WriteStartObject(name);
        foreach ((string key, long value) in values)
            json.WriteNumber(key, value);
        json.WriteEndObject();
    }
}
