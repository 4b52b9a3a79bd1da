namespace Rookery.Pool.Tests.Programs;

/// <summary>A binary tree of tasks that counts its leaves, one of which throws.</summary>
internal readonly struct ThrowingTree(int height, int bad, int at = 0) : IForkTask<long>
{
    /// <inheritdoc/>
    public long Run(Worker worker)
    {
        if (height == 0)
            return at == bad ? throw new InvalidDataException($"leaf {at}") : 1;
        var left = worker.Fork<ThrowingTree, long>(new(height - 1, bad, at * 2));
        long right = new ThrowingTree(height - 1, bad, (at * 2) + 1).Run(worker);
        return worker.Join(left) + right;
    }
}
