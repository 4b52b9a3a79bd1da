using System.Globalization;

namespace Rookery.Pool.Recording;

/// <summary>Writes a recorded run in the form of docs/trace.md.</summary>
internal static class RecordedCsv
{
    /// <summary>Writes it.</summary>
    public static void Write(Recorded run, TextWriter writer, string program)
    {
        foreach ((string key, string value) in Metadata(run, program))
            writer.Write($"# {key}: {value}\n");
        writer.Write("step,time,worker,kind,task,other,line,label\n");
        for (int step = 0; step < run.Events.Count; step++)
        {
            RecordedEvent item = run.Events[step];
            string label = run.Labels.Count == 0 ? "" : item.Kind switch
            {
                RecordedKind.Fork or RecordedKind.Call => run.Labels[item.Other],
                RecordedKind.Begin when item.Other < 0 => run.Labels[item.Task],
                _ => "",
            };
            string row = string.Create(
                CultureInfo.InvariantCulture,
                $"{step},{item.Time},{item.Worker},{WordOf(item.Kind)},{item.Task},{item.Other},{item.Line}");
            writer.Write($"{row},{Quoted(label)}\n");
        }
    }

    /// <summary>The word of a kind, as docs/trace.md has it.</summary>
    public static string WordOf(RecordedKind kind) => kind switch
    {
        RecordedKind.LostRace => "lost-race",
        RecordedKind.JoinWait => "join-wait",
        RecordedKind.JoinPass => "join-pass",
        _ => kind.ToString().ToLowerInvariant(),
    };

    private static IEnumerable<(string Key, string Value)> Metadata(Recorded run, string program)
    {
        PoolOptions options = run.Options;
        yield return ("rookery-trace", "1");
        yield return ("program", program.ReplaceLineEndings(" "));
        yield return ("maker", "Rookery.Pool");
        yield return ("workers", options.Workers.ToString(CultureInfo.InvariantCulture));
        yield return ("cores", options.Workers.ToString(CultureInfo.InvariantCulture));
        yield return ("seed", options.Seed.ToString(CultureInfo.InvariantCulture));
        yield return ("time-unit", "ns");
        yield return ("clock-uncertainty", run.ClockUncertainty.ToString(CultureInfo.InvariantCulture));
        yield return ("outcome", "finished");
        yield return ("looks", "some");
        foreach ((string name, string word) in OptionText.Of(options))
            yield return ("scheduler." + name, word);
    }

    private static string Quoted(string text) =>
        text.AsSpan().ContainsAny(",\"\r\n") ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : text;
}
