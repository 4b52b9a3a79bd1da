using System.Globalization;
using Rookery.Traces;

namespace Rookery.Commands;

/// <summary>Says an event in the words of the trace: until the narration says why it happened, what happened.</summary>
internal sealed class PlainNarrator(Trace trace)
{
    /// <summary>The event of a step, as a line.</summary>
    public string Sentence(int step)
    {
        TraceEvent item = trace[step];
        string task = item.Task < 0 ? "" : " " + trace.Labels.LabelOf(item.Task);
        return string.Create(
            CultureInfo.InvariantCulture, $"worker {item.Worker}: {item.Kind.ToString().ToLowerInvariant()}{task}");
    }
}
