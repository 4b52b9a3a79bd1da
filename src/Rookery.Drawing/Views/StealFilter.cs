using Rookery.Traces;

namespace Rookery.Drawing;

/// <summary>
/// Tells steals from further tasks of the same steal: several steal events in a row by one worker at one time are one.
/// Mutable; events must come in order.
/// </summary>
internal sealed class StealFilter
{
    // Time of the worker's last event when that was a steal, else -1.
    private readonly long[] _lastSteal;

    public StealFilter(int workers)
    {
        _lastSteal = new long[workers];
        Array.Fill(_lastSteal, -1);
    }

    /// <summary>Whether the event begins a steal.</summary>
    public bool IsNewSteal(in TraceEvent item)
    {
        ref var last = ref _lastSteal[item.Worker];
        var isSteal = item.Kind == EventKind.Steal;
        var isNew = isSteal && last != item.Time;
        last = isSteal ? item.Time : -1;
        return isNew;
    }
}
