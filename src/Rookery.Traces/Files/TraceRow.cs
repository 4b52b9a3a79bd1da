namespace Rookery.Traces.Files;

/// <summary>
/// One row as a file has it, before its numbers are checked; -1 (0 for the line) stands for an empty field.
/// </summary>
/// <param name="Step">Number of the event, or null when the file has no such column.</param>
/// <param name="Time">Time.</param>
/// <param name="Worker">Worker.</param>
/// <param name="Kind">Kind.</param>
/// <param name="Task">Task.</param>
/// <param name="Other">Other party.</param>
/// <param name="Line">Line of the program.</param>
internal readonly record struct TraceRow(
    long? Step, long Time, long Worker, EventKind Kind, long Task, long Other, long Line);
