using Rookery.Traces.Replaying;

namespace Rookery.Drawing;

/// <summary>How many tasks, and how many stolen ones, each task's subtree has.</summary>
internal sealed class TreeCounts
{
    private readonly int[] _tasks;
    private readonly int[] _stolen;

    private TreeCounts(int count) => (_tasks, _stolen) = (new int[count], new int[count]);

    /// <summary>Tasks in the subtree, itself included.</summary>
    public int TasksOf(int task) => _tasks[task];

    /// <summary>Tasks in the subtree that were stolen, itself included.</summary>
    public int StolenOf(int task) => _stolen[task];

    /// <summary>Counts below a root.</summary>
    /// <remarks>Children are added up after all of theirs: the order of finding, backwards.</remarks>
    public static TreeCounts Of(TaskTable table, int root)
    {
        var counts = new TreeCounts(table.Count);
        var order = new List<int>();
        var open = new Stack<int>([root]);
        while (open.TryPop(out var task))
        {
            // A task that is found twice belongs to a tree that is none: it is counted once.
            if (counts._tasks[task] > 0)
                continue;
            counts._tasks[task] = 1;
            counts._stolen[task] = table[task].Steals > 0 ? 1 : 0;
            order.Add(task);
            foreach (var child in table.ChildrenOf(task))
                open.Push(child);
        }

        for (var i = order.Count - 1; i > 0; i--)
        {
            var parent = table[order[i]].Parent;
            counts._tasks[parent] += counts._tasks[order[i]];
            counts._stolen[parent] += counts._stolen[order[i]];
        }

        return counts;
    }
}
