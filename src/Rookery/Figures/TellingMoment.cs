using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Figures;

/// <summary>A moment worth a figure when none is asked for.</summary>
internal static class TellingMoment
{
    /// <summary>The step of the first steal, else of the middle of the run; -1 for a run without events.</summary>
    public static int Of(Trace trace)
    {
        int steal = Moments.Next(trace, 0, EventKind.Steal);
        return steal >= 0 ? steal : trace.Count == 0 ? -1 : (trace.Count - 1) / 2;
    }
}
