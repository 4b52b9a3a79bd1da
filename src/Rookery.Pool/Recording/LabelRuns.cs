namespace Rookery.Pool.Recording;

/// <summary>What the tasks that a worker made are called, in their order: kept where it changes. Mutable.</summary>
/// <remarks>Most programs have few kinds of tasks, so counting costs less than a list of all.</remarks>
internal sealed class LabelRuns
{
    private readonly List<int> _from = [];
    private readonly List<object> _labels = [];
    private object? _last;

    /// <summary>How many tasks there are.</summary>
    public int Count { get; private set; }

    /// <summary>Adds a task; its number here.</summary>
    public int Add(object label)
    {
        if (label != _last)
            Start(label);
        return Count++;
    }

    /// <summary>What a task is called.</summary>
    public object Of(int task)
    {
        int at = _from.BinarySearch(task);
        return _labels[at < 0 ? ~at - 1 : at];
    }

    /// <summary>Forgets all.</summary>
    public void Clear()
    {
        _from.Clear();
        _labels.Clear();
        _last = null;
        Count = 0;
    }

    private void Start(object label)
    {
        _from.Add(Count);
        _labels.Add(label);
        _last = label;
    }
}
