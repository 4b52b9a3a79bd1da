namespace Rookery.Traces.Measuring;

/// <summary>A stretch of a task's life between two steals that moved it, with the work done in it.</summary>
/// <param name="Work">Work of the task itself and of the tasks that it forked and called in this part.</param>
/// <param name="Before">Index of the part before, or -1.</param>
/// <param name="Move">Index of the steal that began this part, or -1 for the first.</param>
internal record struct TaskPart(long Work, int Before, int Move);
