namespace Rookery.Pool.Workers;

/// <summary>What a worker goes back to when the child that it runs on top has ended.</summary>
/// <param name="Floor">Open children beneath the task; those above are its own.</param>
/// <param name="Slot">The place of its run, as frames carry it.</param>
/// <param name="Task">Its number in the notes.</param>
/// <param name="Line">The line that its notes speak of.</param>
internal readonly record struct TaskPlace(int Floor, long Slot, int Task, int Line);
