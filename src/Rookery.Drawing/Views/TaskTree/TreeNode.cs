namespace Rookery.Drawing;

/// <summary>A task as it is drawn, or the children of one that are summed up. Mutable while it is laid out.</summary>
internal sealed class TreeNode
{
    /// <summary>The task; -1 for children that are summed up.</summary>
    public required int Task { get; init; }

    /// <summary>Levels below the top.</summary>
    public required int Level { get; init; }

    /// <summary>Tasks that are not drawn, below it or summed up in it.</summary>
    public long Hidden { get; set; }

    /// <summary>In order of creation; empty when they are hidden or there are none.</summary>
    public List<TreeNode> Children { get; } = [];

    /// <summary>Room that it takes on its level when it has no children drawn.</summary>
    public double Slot { get; set; }

    /// <summary>Middle, left to right.</summary>
    public double X { get; set; }

    /// <summary>Middle, top to bottom.</summary>
    public double Y { get; set; }

    /// <summary>This and all below, parents first.</summary>
    public IEnumerable<TreeNode> All()
    {
        var open = new Stack<TreeNode>([this]);
        while (open.TryPop(out var node))
        {
            yield return node;
            for (var i = node.Children.Count - 1; i >= 0; i--)
                open.Push(node.Children[i]);
        }
    }
}
