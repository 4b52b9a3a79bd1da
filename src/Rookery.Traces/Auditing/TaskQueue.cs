namespace Rookery.Traces.Auditing;

/// <summary>A deque, or the queue of all: from the top, where the oldest is, to the bottom. Mutable.</summary>
/// <remarks>
/// A list through the tasks themselves, so that what is taken at the wrong place can be taken out all the same.
/// </remarks>
internal sealed class TaskQueue(string name, WorkerLife? owner)
{
    private TaskLife? _top;
    private TaskLife? _bottom;

    /// <summary>What it is called in findings.</summary>
    public string Name { get; } = name;

    /// <summary>Number of tasks in it.</summary>
    public int Count { get; private set; }

    /// <summary>The task at an end; null when it is empty.</summary>
    public TaskLife? At(bool isBottom) => isBottom ? _bottom : _top;

    /// <summary>Puts a task at the bottom; it must be in no queue.</summary>
    public void Put(TaskLife task)
    {
        task.Queue = this;
        task.ChainStart.Holder = owner;
        task.Above = _bottom;
        task.Below = null;
        if (_bottom is { } bottom)
            bottom.Below = task;
        else
            _top = task;
        _bottom = task;
        Count++;
    }

    /// <summary>Takes a task out, wherever in this queue it is.</summary>
    public void Remove(TaskLife task)
    {
        if (task.Above is { } above)
            above.Below = task.Below;
        else
            _top = task.Below;
        if (task.Below is { } below)
            below.Above = task.Above;
        else
            _bottom = task.Above;
        task.Queue = null;
        task.ChainStart.Holder = null;
        task.Above = null;
        task.Below = null;
        Count--;
    }
}
