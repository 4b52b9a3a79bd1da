namespace Rookery.Pool;

/// <summary>The result of a task that has none.</summary>
public readonly record struct Nothing;
