using System.Buffers;
using System.Collections.Immutable;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Rookery.Simulation;

namespace Rookery.Lessons.Labs;

/// <summary>What the lab opens with when a page's exhibit is opened in it. Immutable.</summary>
/// <param name="Name">The program's file.</param>
/// <param name="Text">Its text.</param>
/// <param name="Data">The text of each data file, by the name that the program uses.</param>
/// <param name="Setup">All choices.</param>
/// <param name="Step">Number of events before the first moment.</param>
/// <param name="Title">What the page calls the exhibit, such as <c>Stealing, exhibit 2</c>.</param>
public sealed record LabStart(
    string Name, string Text, ImmutableSortedDictionary<string, string> Data, Setup Setup, int Step, string Title)
{
    /// <summary>What such a file says it is, so that no other is taken for one.</summary>
    public const string Format = "rookery-lab-1";

    private static readonly JsonWriterOptions Options = new()
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>As a file: JSON.</summary>
    public string ToJson()
    {
        var bytes = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(bytes, Options))
        {
            json.WriteStartObject();
            json.WriteString("format", Format);
            json.WriteString("title", Title);
            json.WriteString("name", Name);
            json.WriteString("text", Text);
            json.WriteStartObject("data");
            foreach ((string file, string rows) in Data)
                json.WriteString(file, rows);
            json.WriteEndObject();
            json.WriteString("setup", Setup.ToString());
            json.WriteNumber("step", Step);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(bytes.WrittenSpan) + "\n";
    }
}
