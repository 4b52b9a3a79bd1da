using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Lessons.Exhibits;

/// <summary>A moment worth a figure when none is asked for.</summary>
internal static class TellingMoment
{
    /// <summary>The first steal, else the middle of the run.</summary>
    public static (int Step, string Name) Of(Trace trace)
    {
        int steal = Moments.Next(trace, 0, EventKind.Steal);
        return steal >= 0 ? (steal, "first steal") : ((trace.Count - 1) / 2, "middle of the run");
    }
}
