namespace Rookery.Pool.Recording;

/// <summary>A look that got nothing: nothing was there, or somebody else was quicker.</summary>
/// <param name="Time">When it was noted.</param>
/// <param name="After">Index of the worker's event before it; -1 for none.</param>
/// <param name="Victim">At whom; -1 for the queue of all; the worker itself when an owner lost its last task.</param>
/// <param name="IsRace">Whether somebody else was quicker.</param>
/// <param name="Task">The task that an owner lost; -1 otherwise.</param>
internal readonly record struct Look(long Time, int After, int Victim, bool IsRace = false, int Task = -1);
