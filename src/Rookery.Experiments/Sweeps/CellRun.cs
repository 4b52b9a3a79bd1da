using Rookery.Notation;
using Rookery.Simulation;

namespace Rookery.Experiments;

/// <summary>
/// One cell of a sweep that is computed in portions, for a caller that has other things to do in between.
/// </summary>
/// <remarks>
/// Mutable, for one thread. The result is that of <see cref="Sweep.Run"/>, whatever the portions.
/// </remarks>
public sealed class CellRun
{
    private readonly Sweep _sweep;
    private readonly int _cell;
    private readonly SimulationRun _run;

    internal CellRun(Sweep sweep, int cell)
    {
        (_sweep, _cell) = (sweep, cell);
        _run = sweep.Guarded(cell, () =>
        {
            (Treatment treatment, long seed) = sweep.CellAt(cell);
            return sweep.Subject.Begin(treatment.Setup, seed);
        });
    }

    /// <summary>Whether the run is over: nothing is left but <see cref="Finish"/>.</summary>
    public bool IsOver => _run.IsOver;

    /// <summary>Events so far.</summary>
    public long Events => _run.Events;

    /// <summary>Goes on for some events.</summary>
    /// <param name="events">At least 1.</param>
    /// <exception cref="InputException">The run failed or reached a limit; the message names the treatment.</exception>
    public void Advance(long events) => _sweep.Guarded(_cell, () =>
    {
        _run.Advance(events);
        return true;
    });

    /// <summary>What the cell came to. Runs to the end first where it has not.</summary>
    /// <exception cref="InputException">The run failed or reached a limit; the message names the treatment.</exception>
    public CellResult Finish() => _sweep.Guarded(_cell, () => Sweep.ResultOf(_cell, _run.Finish()));
}
