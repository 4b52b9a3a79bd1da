using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Drawing;

/// <summary>
/// How many workers a trace shows: those asked for, or more when more appear, up to <see cref="Replay.WorkersMax"/>.
/// Events of workers beyond are passed over.
/// </summary>
internal static class TraceSize
{
    public static int WorkersOf(Trace trace) =>
        Math.Clamp(Math.Max(trace.Inputs.Workers, trace.WorkerCount), 1, Replay.WorkersMax);

    /// <summary>The program's name for a title, or words that stand in for it.</summary>
    public static string NameOf(Trace trace, DrawingWords words) =>
        trace.Inputs.Program.Length > 0 ? trace.Inputs.Program : words.ARun;
}
