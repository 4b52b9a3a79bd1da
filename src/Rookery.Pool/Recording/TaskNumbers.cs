namespace Rookery.Pool.Recording;

/// <summary>Numbers tasks from 0 in the order in which they appear, and names them. Mutable, used once.</summary>
internal sealed class TaskNumbers(RecordedTasks tasks, Func<int, string> labels, int root)
{
    private readonly Dictionary<int, int> _numbers = [];

    /// <summary>The names, by number.</summary>
    public List<string> Labels { get; } = [];

    /// <summary>The event with our numbers, and with the parents of begins and ends.</summary>
    public RecordedEvent Renumbered(in RecordedEvent item)
    {
        int other = item.Kind switch
        {
            RecordedKind.Begin or RecordedKind.End => item.Task == root ? -1 : Number(tasks.ParentOf(item.Task)),
            RecordedKind.Fork or RecordedKind.Call or RecordedKind.JoinWait => Number(item.Other),
            _ => item.Other,
        };
        return item with { Task = Number(item.Task), Other = other };
    }

    private int Number(int task)
    {
        if (task < 0 || tasks.HasGiven)
            return task;
        if (_numbers.TryGetValue(task, out int number))
            return number;
        number = _numbers.Count;
        _numbers[task] = number;
        Labels.Add(Label(task));
        return number;
    }

    private string Label(int task)
    {
        if (tasks.Parts.TryGetValue(task, out int whole))
        {
            while (tasks.Parts.TryGetValue(whole, out int outer))
                whole = outer;
            return "part of " + Label(whole);
        }

        return labels(task);
    }
}
