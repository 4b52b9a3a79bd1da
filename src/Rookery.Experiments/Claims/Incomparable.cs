namespace Rookery.Experiments.Claims;

/// <summary>Why runs cannot be compared: some lack the measure.</summary>
/// <param name="Starved">Runs that starved and never came to their end.</param>
/// <param name="Without">Runs that have no such measure.</param>
/// <param name="Runs">All runs.</param>
public sealed record Incomparable(int Starved, int Without, int Runs);
