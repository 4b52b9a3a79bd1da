namespace Rookery.Checking;

/// <summary>How far others can hold an operation up, and why.</summary>
/// <param name="Operation">The operation's name.</param>
/// <param name="Class">The class, the worst over all of the scenario's calls of it.</param>
/// <param name="Reason">Why; of what is not wait-free the steps that can repeat.</param>
public sealed record OperationProgress(string Operation, ProgressClass Class, ProgressReason Reason);
