using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Drawing;

/// <summary>
/// How many workers a trace shows: those asked for, or more when more appear, up to <see cref="Replay.WorkersMax"/>.
/// Events of workers beyond are passed over.
/// </summary>
internal static class TraceSize
{
    public static int WorkersOf(Trace trace)
    {
        var largest = Math.Clamp(trace.Inputs.Workers, 1, Replay.WorkersMax) - 1;
        for (var chunk = 0; chunk < trace.ChunkCount; chunk++)
        {
            foreach (ref readonly var item in trace.Chunk(chunk))
                largest = Math.Max(largest, item.Worker);
        }

        return Math.Min(largest + 1, Replay.WorkersMax);
    }

    /// <summary>The program's name for a title, or words that stand in for it.</summary>
    public static string NameOf(Trace trace) => trace.Inputs.Program.Length > 0 ? trace.Inputs.Program : "a run";

    /// <summary><c>1 worker</c>, <c>4 workers</c>.</summary>
    public static string Count(long number, string one) =>
        number == 1 ? $"1 {one}" : $"{NumberText.Whole(number)} {one}s";
}
