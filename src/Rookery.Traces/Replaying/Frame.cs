namespace Rookery.Traces.Replaying;

/// <summary>A task on a worker, with the line at which it last was; its callers go with it and are not
/// listed.</summary>
/// <param name="Task">Number of the task.</param>
/// <param name="Line">Line of its last event, or 0 when there was none.</param>
internal readonly record struct Frame(int Task, int Line);
