namespace Rookery.Pool.Tests.Programs;

/// <summary>What a search of an unbalanced tree counts.</summary>
internal readonly record struct TreeCount(long Nodes, int Depth, long Leaves)
{
    public static TreeCount operator +(TreeCount left, TreeCount right) => new(
        left.Nodes + right.Nodes, Math.Max(left.Depth, right.Depth), left.Leaves + right.Leaves);
}
