using Rookery.Notation;

namespace Rookery.Simulation.Engine;

/// <summary>An engine as seen by who drives it, whatever its events go to.</summary>
internal interface IRunEngine
{
    /// <summary>Events so far.</summary>
    long Events { get; }

    /// <summary>Whether the run has ended, one way or the other.</summary>
    bool IsOver { get; }

    /// <summary>Why it starved; null while it runs or when it finished.</summary>
    Starvation? Starvation { get; }

    /// <summary>Goes on until at least so many more events have happened, or the run is over.</summary>
    /// <exception cref="InputException">The program is at fault (overflow, negative work), or a limit was
    /// reached.</exception>
    void Advance(long events);
}
