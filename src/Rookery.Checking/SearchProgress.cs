namespace Rookery.Checking;

/// <summary>How far a search has come.</summary>
/// <param name="States">States found so far.</param>
/// <param name="Transitions">Steps made so far.</param>
/// <param name="Depth">Steps from the start to those that are looked at now.</param>
/// <param name="Frontier">States found that nobody has gone on from yet.</param>
/// <param name="Bytes">Bytes that the states take.</param>
public readonly record struct SearchProgress(long States, long Transitions, int Depth, long Frontier, long Bytes);
