namespace Rookery.Traces.Replaying;

/// <summary>Which stretch each kind of event opens.</summary>
public static class Stretches
{
    /// <summary>The stretch that an event of this kind opens on its worker.</summary>
    public static Stretch After(EventKind kind) => kind switch
    {
        EventKind.Work => Stretch.Working,
        EventKind.Begin or EventKind.End or EventKind.Fork or EventKind.Call or EventKind.JoinPass
            or EventKind.Unblock or EventKind.Take or EventKind.Steal => Stretch.Scheduling,
        EventKind.Probe or EventKind.Empty or EventKind.LostRace or EventKind.Wake
            or EventKind.JoinWait => Stretch.Searching,
        EventKind.Block => Stretch.Blocked,
        EventKind.Sleep => Stretch.Asleep,
        EventKind.Stop => Stretch.Off,
    };
}
