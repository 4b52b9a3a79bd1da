namespace Rookery.Traces.Replaying;

/// <summary>The tree of tasks as flat arrays: the children of each, and the places of a walk from parent to
/// children.</summary>
/// <remarks>
/// A forest rather than a tree, since an odd trace may have tasks without a known parent. Children of one task lie side
/// by side. In the walk every task stands before its descendants, and its subtree is one run of <see cref="Size"/>
/// places from
/// <see cref="Place"/> on: sums over a subtree become sums over a range.
/// Worked example: 0 forks 1, 1 forks 3, 0 forks 2. Places of 0, 1, 2, 3 are 0, 1, 3, 2; sizes are 4, 2, 1, 1.
/// </remarks>
internal sealed class TaskForest
{
    private readonly int[] _firstChild;
    private readonly int[] _endedCount;
    private int[] _children = [];
    private int[] _ended = [];

    /// <summary>Makes room; <see cref="Parts"/> does the rest.</summary>
    public TaskForest(int count)
    {
        _firstChild = new int[count + 1];
        _endedCount = new int[count];
        Size = new int[count];
        Place = new int[count];
    }

    /// <summary>Builds the forest, part by part, each with about how many tasks it went through.</summary>
    /// <param name="parents">Parent of each task, or -1.</param>
    /// <param name="created">All tasks with a parent, in order of creation; a parent stands before its
    /// children.</param>
    /// <param name="ended">Tasks in order of their ends.</param>
    public IEnumerable<int> Parts(int[] parents, List<int> created, List<int> ended)
    {
        foreach (int task in created)
            _firstChild[parents[task] + 1]++;
        for (int i = 0; i < parents.Length; i++)
            _firstChild[i + 1] += _firstChild[i];
        yield return parents.Length;
        _children = new int[created.Count];
        Distribute(parents, created, _children, new int[parents.Length]);
        yield return created.Count;
        _ended = new int[created.Count];
        Distribute(parents, ended, _ended, _endedCount);
        yield return ended.Count;
        CountSizes(parents, created);
        yield return created.Count;
        Walk(parents, created);
        yield return created.Count;
    }

    /// <summary>Place of each task in the walk.</summary>
    public int[] Place { get; }

    /// <summary>Number of tasks in the subtree of each task, itself included.</summary>
    public int[] Size { get; }

    public ReadOnlySpan<int> ChildrenOf(int task) =>
        _children.AsSpan(_firstChild[task], _firstChild[task + 1] - _firstChild[task]);

    public ReadOnlySpan<int> EndedChildrenOf(int task) => _ended.AsSpan(_firstChild[task], _endedCount[task]);

    private void Distribute(int[] parents, List<int> tasks, int[] into, int[] used)
    {
        foreach (int task in tasks)
        {
            int parent = parents[task];
            if (parent >= 0)
                into[_firstChild[parent] + used[parent]++] = task;
        }
    }

    private void CountSizes(int[] parents, List<int> created)
    {
        Array.Fill(Size, 1);
        for (int i = created.Count - 1; i >= 0; i--)
            Size[parents[created[i]]] += Size[created[i]];
    }

    private void Walk(int[] parents, List<int> created)
    {
        int[] next = new int[parents.Length];
        int free = 0;
        for (int task = 0; task < parents.Length; task++)
        {
            if (parents[task] >= 0)
                continue;
            Place[task] = free;
            next[task] = free + 1;
            free += Size[task];
        }

        foreach (int task in created)
        {
            int parent = parents[task];
            Place[task] = next[parent];
            next[task] = Place[task] + 1;
            next[parent] += Size[task];
        }
    }
}
