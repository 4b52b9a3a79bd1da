using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Rookery.Drawing;
using Rookery.Lab.Runs;
using Rookery.Lab.Stage;
using Rookery.Traces;
using Rookery.Traces.Measuring;

namespace Rookery.Lab.Files;

/// <summary>A run as files that can be kept: picture, trace, numbers. Equal runs give equal bytes.</summary>
/// <param name="run">The run.</param>
internal sealed class RunExport(LabRun run)
{
    private const double PictureWidth = 1600;
    private const double PictureHeight = 900;

    private static readonly JsonWriterOptions JsonOptions = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The name of a file of the whole run, such as <c>count-uneven.parquet</c>.</summary>
    public string NameOf(string ending) => Stem() + ending;

    /// <summary>The name of a file of one moment, such as <c>count-uneven-step-40.svg</c>.</summary>
    public string NameOf(int step, string ending) =>
        string.Create(CultureInfo.InvariantCulture, $"{Stem()}-step-{step}{ending}");

    /// <summary>The workers at a step as a picture of its own, as wide as a slide: with words for those who do not see
    /// it.</summary>
    /// <param name="step">Number of events that have happened.</param>
    /// <param name="style">The paints: as the page shows it.</param>
    /// <param name="words">The language.</param>
    public string Svg(int step, Style style, DrawingWords words)
    {
        Scene scene = StageScene.Workers(run, step, PictureWidth, PictureHeight, words) with
        {
            Title = string.Create(CultureInfo.InvariantCulture, $"{run.Trace.Inputs.Program}, step {step}"),
            Description = run.Narrator.Describe(run.Replay.At(step)),
        };
        return SvgWriter.Write(scene, new() { Style = style });
    }

    /// <summary>The trace as Parquet; the part for it has to be loaded.</summary>
    public async Task<byte[]> ParquetAsync()
    {
        using var stream = new MemoryStream();
        await TraceParquet.WriteAsync(run.Trace, stream).ConfigureAwait(true);
        return stream.ToArray();
    }

    /// <summary>The trace as CSV.</summary>
    public byte[] Csv()
    {
        using var stream = new MemoryStream();
        TraceCsv.Write(run.Trace, stream);
        return stream.ToArray();
    }

    /// <summary>All measures by name, and what the run was made from, as JSON.</summary>
    public byte[] Measures()
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, JsonOptions))
        {
            TraceInputs inputs = run.Trace.Inputs;
            json.WriteStartObject();
            json.WriteString("program", inputs.Program);
            json.WriteString("maker", inputs.Maker);
            json.WriteString("setup", run.Inputs?.Setup.ToString() ?? "");
            json.WriteString("timeUnit", inputs.TimeUnit);
            json.WriteString("outcome", inputs.Starved ? "starved" : "finished");
            foreach (NamedMeasure measure in MeasureNames.All)
                WriteMeasure(json, measure, inputs.Starved);
            json.WriteEndObject();
        }

        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }

    private void WriteMeasure(Utf8JsonWriter json, NamedMeasure measure, bool isStarved)
    {
        Ratio value = measure.ValueOf(run.Measures, isStarved);
        if (!value.HasValue)
            json.WriteNull(measure.Name);
        else
            json.WriteNumber(measure.Name, value.ToDouble());
    }

    // A program's name may come from anybody's file: what remains is a name for a file on any system.
    private string Stem()
    {
        string name = run.Trace.Inputs.Program;
        name = name[(name.LastIndexOfAny(['/', '\\']) + 1)..];
        if (name.EndsWith(".fj", StringComparison.Ordinal))
            name = name[..^3];
        var stem = new StringBuilder();
        foreach (char c in name.Take(60))
            stem.Append(char.IsAsciiLetterOrDigit(c) || c is '-' or '_' ? c : '-');
        return stem.ToString().Trim('-') is { Length: > 0 } plain ? plain : "run";
    }
}
