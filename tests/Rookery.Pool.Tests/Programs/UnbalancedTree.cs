using System.Buffers.Binary;
using System.Security.Cryptography;

namespace Rookery.Pool.Tests.Programs;


/// <summary>
/// Searches a geometric tree of the unbalanced tree search benchmark, whose shape follows from SHA-1 sums.
/// </summary>
/// <remarks>
/// Source: S. Olivier and others, "UTS: an unbalanced tree search benchmark", LCPC 2006. A node is 20 bytes; child i
/// of it is
/// the SHA-1 of those and i; a node has floor(log(1 - u) / log(1 - p)) children, p = 1 / (1 + b), b = 4 above the
/// largest depth.
/// </remarks>
internal readonly struct UnbalancedTree(byte[] node, int depth, int depthMax) : IForkTask<TreeCount>
{
    private const double Branching = 4;

    /// <summary>The root of a seed.</summary>
    public static UnbalancedTree Root(int seed, int depthMax)
    {
        byte[] start = new byte[20];
        BinaryPrimitives.WriteInt32BigEndian(start.AsSpan(16), seed);
        return new(SHA1.HashData(start), 0, depthMax);
    }

    /// <inheritdoc/>
    public TreeCount Run(Worker worker)
    {
        int count = ChildCount();
        if (count == 0)
            return new(1, depth, 1);
        var children = new Forked<UnbalancedTree, TreeCount>[count - 1];
        for (int i = 0; i < children.Length; i++)
            children[i] = worker.Fork<UnbalancedTree, TreeCount>(Child(i));
        TreeCount sum = new TreeCount(1, depth, 0) + Child(count - 1).Run(worker);
        for (int i = children.Length - 1; i >= 0; i--)
            sum += worker.Join(children[i]);
        return sum;
    }

    private UnbalancedTree Child(int index)
    {
        Span<byte> bytes = stackalloc byte[24];
        node.CopyTo(bytes);
        BinaryPrimitives.WriteInt32BigEndian(bytes[20..], index);
        return new(SHA1.HashData(bytes), depth + 1, depthMax);
    }

    private int ChildCount()
    {
        double branching = depth == 0 ? Branching : depth < depthMax ? Branching : 0;
        double p = 1 / (1 + branching);
        double u = (BinaryPrimitives.ReadUInt32BigEndian(node.AsSpan(16)) & 0x7fffffff) / 2147483648.0;
        int count = branching == 0 ? 0 : (int)Math.Floor(Math.Log(1 - u) / Math.Log(1 - p));
        return Math.Min(count, 100);
    }
}
