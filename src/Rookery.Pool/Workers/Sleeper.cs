namespace Rookery.Pool.Workers;

/// <summary>A worker on the list of those that sleep, in the order in which they fell asleep.</summary>
internal readonly record struct Sleeper(WorkerCore Worker, SleepKind Kind);
