namespace Rookery.Drawing;

/// <summary>One run of a sweep over numbers of workers.</summary>
/// <param name="Workers">At least 1.</param>
/// <param name="Makespan">At least 0, in the unit of the sweep.</param>
/// <param name="Target">Where its point leads; empty (default) for nowhere.</param>
public readonly record struct SpeedUpRun(int Workers, long Makespan, string Target = "");
