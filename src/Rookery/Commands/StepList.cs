using System.Globalization;
using Rookery.Notation;
using Rookery.Terminal;
using Rookery.Traces;
using Rookery.Traces.Narration;

namespace Rookery.Commands;

/// <summary>Tells a run step by step, a line for each: number, time, and what happened and why.</summary>
internal static class StepList
{
    /// <summary>Tells the steps of a range.</summary>
    /// <exception cref="InputException">The run has no step of the range.</exception>
    /// <exception cref="OperationCanceledException">The reader has interrupted.</exception>
    public static void Write(AppConsole console, Trace trace, StepRange range, CancellationToken stop)
    {
        if (range.First >= trace.Count)
            throw new InputException(AppErrors.NoSuchStep(range.First, trace.Count));
        var narrator = new Narrator(trace);
        int last = (int)Math.Min(range.Last, trace.Count - 1);
        int stepWidth = Math.Max(4, last.ToString(CultureInfo.InvariantCulture).Length);
        int timeWidth = Math.Max(6, trace[last].Time.ToString(CultureInfo.InvariantCulture).Length);
        console.Out.WriteLine($"{"step".PadLeft(stepWidth)}  {"time".PadLeft(timeWidth)}");
        for (int step = (int)range.First; step <= last; step++)
        {
            stop.ThrowIfCancellationRequested();
            string number = step.ToString(CultureInfo.InvariantCulture).PadLeft(stepWidth);
            string time = trace[step].Time.ToString(CultureInfo.InvariantCulture).PadLeft(timeWidth);
            console.Out.WriteLine($"{number}  {time}  {narrator.Sentence(step)}");
        }
    }
}
