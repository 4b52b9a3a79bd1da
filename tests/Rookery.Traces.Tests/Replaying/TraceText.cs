using System.Globalization;

namespace Rookery.Traces.Tests.Replaying;

/// <summary>Small traces as text: a line is time, worker, kind, task, other, line; what is left out is none.</summary>
internal static class TraceText
{
    /// <summary>The example that several tests speak of: task 0 forks 1, calls 2, joins; worker 1 steals task
    /// 1.</summary>
    public const string OneSteal = """
        0 0 begin 0 -1 1
        0 0 work 0 -1 2
        1 1 probe -1 0
        2 1 empty -1 0
        2 1 probe -1 0
        10 0 fork 0 1 3
        10 0 call 0 2 4
        10 0 begin 2 0 7
        10 0 work 2 -1 8
        11 1 empty -1 0
        11 1 probe 1 0
        12 1 steal 1 0
        13 1 begin 1 0 7
        13 1 work 1 -1 8
        20 0 end 2 0 9
        20 0 join-wait 0 1 5
        20 0 probe -1 1
        33 1 end 1 0 9
        33 0 empty -1 1
        33 0 join-pass 0 -1 5
        33 0 end 0 -1 6
        33 0 stop
        33 1 stop
        """;

    public static Trace Read(string text, params (string Option, string Word)[] options) =>
        Read(text, new TraceInputs { Workers = 2, Cores = 2 }, options);

    public static Trace Read(string text, TraceInputs inputs, params (string Option, string Word)[] options)
    {
        var recorder = new TraceRecorder();
        const StringSplitOptions Trimmed = StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries;
        foreach (string line in text.Split('\n', Trimmed))
            recorder.Add(ReadEvent(line));
        inputs = inputs with
        {
            Scheduler = inputs.Scheduler.AddRange(options.Select(o => KeyValuePair.Create(o.Option, o.Word))),
        };
        return recorder.Build(inputs, TextLabels.None);
    }

    public static string WordOf(EventKind kind) =>
        string.Concat(kind.ToString().Select((c, i) => i > 0 && char.IsUpper(c) ? $"-{c}" : $"{c}")).ToLowerInvariant();

    private static TraceEvent ReadEvent(string line)
    {
        string[] words = line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        EventKind kind = Enum.GetValues<EventKind>().Single(k => WordOf(k) == words[2]);
        int Number(int index, int byDefault) =>
            index < words.Length ? int.Parse(words[index], CultureInfo.InvariantCulture) : byDefault;
        return new(Number(0, 0), kind, Number(1, 0), Number(3, -1), Number(4, -1), Number(5, 0));
    }
}
