namespace Rookery.Pool.Recording;

/// <summary>A look that found nothing.</summary>
/// <param name="Time">When it was noted.</param>
/// <param name="After">Index of the worker's event before it; -1 for none.</param>
/// <param name="Victim">At whom; -1 for the queue of all.</param>
internal readonly record struct Look(long Time, int After, int Victim);
