namespace Rookery.Checking.Witnesses;

/// <summary>An operation in an execution.</summary>
/// <param name="Thread">Who ran it, from 0.</param>
/// <param name="Text">As it is called: <c>push(1)</c>.</param>
/// <param name="First">
/// The step with which it began, from 0, also for one that ends before the first step; -1 when it has not begun.
/// </param>
/// <param name="Last">The step with which it ended; -1 when it has not ended.</param>
/// <param name="Result">What it returned; empty for nothing.</param>
public sealed record WitnessCall(int Thread, string Text, int First, int Last, string Result);
