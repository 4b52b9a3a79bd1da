namespace Rookery.Checking.Witnesses;

/// <summary>A write that waits in a thread's buffer.</summary>
/// <param name="Place">Where it goes; empty for a fence between writes.</param>
/// <param name="Value">What it writes.</param>
public sealed record WaitingWrite(string Place, long Value);
