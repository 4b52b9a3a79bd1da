using Rookery.Traces.Replaying;

namespace Rookery.Drawing;

/// <summary>Which tasks of a tree are drawn, and where.</summary>
/// <remarks>
/// The tree is opened from the root, always at the task with the most work below whose children still find room; so the
/// parts that matter show, and the rest is counted. Then each drawn leaf takes the next slot from the left and each
/// parent stands over the middle of its children, so that no two meet.
/// </remarks>
internal sealed class TreePlan
{
    private const int ChildrenMax = 16;
    private const int NodesMax = 420;

    private readonly TaskTable _table;
    private readonly TreeCounts _counts;
    private readonly double _pitch;
    private readonly double _textSize;

    private TreePlan(TaskTable table, TreeCounts counts, TreeNode root, double pitch, double textSize)
    {
        (_table, _counts, Root, _pitch, _textSize) = (table, counts, root, pitch, textSize);
    }

    public TreeNode Root { get; }

    /// <summary>Levels drawn.</summary>
    public int Levels => Root.All().Max(node => node.Level) + 1;

    /// <param name="table">The tasks.</param>
    /// <param name="counts">Sizes of subtrees.</param>
    /// <param name="root">The task at the top.</param>
    /// <param name="width">Room in pixels.</param>
    /// <param name="levelsMax">The most levels.</param>
    /// <param name="pitch">The least distance of neighbours.</param>
    /// <param name="textSize">Of the numbers of hidden tasks.</param>
    public static TreePlan Of(
        TaskTable table, TreeCounts counts, int root, double width, int levelsMax, double pitch, double textSize)
    {
        var top = new TreeNode { Task = root, Level = 0, Hidden = counts.TasksOf(root) - 1 };
        var plan = new TreePlan(table, counts, top, pitch, textSize);
        plan.Open(width, levelsMax);
        return plan;
    }

    /// <summary>Places all nodes within an area.</summary>
    public void Place(Area area)
    {
        var leaves = Root.All().Where(node => node.Children.Count == 0).ToList();
        var stretch = area.Width / leaves.Sum(leaf => leaf.Slot);
        var x = area.X;
        foreach (var leaf in leaves)
        {
            leaf.X = x + (leaf.Slot * stretch / 2);
            x += leaf.Slot * stretch;
        }

        var rise = area.Height / Math.Max(1, Levels - 1);
        foreach (var node in Root.All().Reverse())
        {
            node.Y = area.Y + (node.Level * rise);
            if (node.Children.Count > 0)
                node.X = (node.Children[0].X + node.Children[^1].X) / 2;
        }
    }

    private void Open(double width, int levelsMax)
    {
        Root.Slot = SlotOf(Root);
        var used = Root.Slot;
        var nodes = 1;
        var open = new PriorityQueue<TreeNode, (long NegativeWork, int Task)>();
        Offer(open, Root);
        while (open.TryDequeue(out var node, out _) && nodes < NodesMax)
        {
            if (node.Level + 1 >= levelsMax)
                continue;
            var children = ChildrenOf(node);
            var more = children.Sum(child => child.Slot) - node.Slot;
            if (used + more > width || nodes + children.Count > NodesMax)
                continue;
            used += more;
            nodes += children.Count;
            node.Hidden = 0;
            node.Children.AddRange(children);
            foreach (var child in children)
                Offer(open, child);
        }
    }

    private void Offer(PriorityQueue<TreeNode, (long NegativeWork, int Task)> open, TreeNode node)
    {
        if (node.Task >= 0 && node.Hidden > 0)
            open.Enqueue(node, (-_table[node.Task].TotalWork, node.Task));
    }

    // All children, or of very many the largest in their order, and the others summed up at the end.
    private List<TreeNode> ChildrenOf(TreeNode node)
    {
        var all = _table.ChildrenOf(node.Task).ToArray();
        var kept = all;
        if (all.Length > ChildrenMax)
        {
            kept = [.. all.OrderByDescending(child => _table[child].TotalWork).ThenBy(child => child)
                .Take(ChildrenMax - 1).Order()];
        }

        var nodes = kept.Select(child => new TreeNode
        {
            Task = child,
            Level = node.Level + 1,
            Hidden = _counts.TasksOf(child) - 1,
        }).ToList();
        if (kept.Length < all.Length)
        {
            var hidden = node.Hidden - nodes.Sum(child => child.Hidden + 1);
            nodes.Add(new() { Task = -1, Level = node.Level + 1, Hidden = hidden });
        }

        foreach (var child in nodes)
            child.Slot = SlotOf(child);
        return nodes;
    }

    private double SlotOf(TreeNode node) => node.Hidden == 0
        ? _pitch
        : Math.Max(_pitch, (FontWidths.Measure(TextOf(node), _textSize) * TextFit.Reserve) + (_textSize * 0.4));

    /// <summary>How many tasks are hidden, as text.</summary>
    public static string TextOf(TreeNode node) => $"+{NumberText.Compact(node.Hidden)}";
}
