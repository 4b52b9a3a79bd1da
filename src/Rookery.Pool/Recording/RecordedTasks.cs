namespace Rookery.Pool.Recording;

/// <summary>The tasks of a recorded run: who made whom, and what they are called. Mutable, for one thread.</summary>
/// <param name="isGiven">
/// Whether the program numbered its tasks itself; it then joins all children at once, and notes when it works.
/// </param>
/// <param name="partsFrom">Numbers from here on are free for parts.</param>
internal sealed class RecordedTasks(bool isGiven, int partsFrom)
{
    private readonly Dictionary<int, int> _parents = [];
    private readonly HashSet<int> _called = [];
    private int _next = partsFrom;

    /// <summary>Parts and the tasks that they are of.</summary>
    public Dictionary<int, int> Parts { get; } = [];

    /// <summary>Whether the program numbered its tasks.</summary>
    public bool HasGiven => isGiven;

    /// <summary>Whether the task was called, not forked.</summary>
    public bool IsCalled(int task) => _called.Contains(task);

    /// <summary>Who made it; -1 for the first, or as long as that is unknown.</summary>
    public int ParentOf(int task) => _parents.GetValueOrDefault(task, -1);

    /// <summary>Says who made it.</summary>
    public void SetParent(int task, int parent) => _parents[task] = parent;

    /// <summary>Says that it was called.</summary>
    public void SetCalled(int task) => _called.Add(task);

    /// <summary>A number for a part of a task.</summary>
    public int NewPart(int task)
    {
        Parts[_next] = task;
        _parents[_next] = task;
        return _next++;
    }
}
