using System.Numerics;

namespace Rookery.Pool.Tests.Programs;

/// <summary>
/// Counts the ways to put queens on a board by trying each free field of the next row, each as a child.
/// </summary>
internal readonly struct Queens(int size, int row, uint columns, uint left, uint right) : IForkTask<long>
{
    /// <inheritdoc/>
    public long Run(Worker worker)
    {
        if (row == size)
            return 1;
        uint free = ~(columns | left | right) & ((1u << size) - 1);
        var children = new Forked<Queens, long>[BitOperations.PopCount(free)];
        int count = 0;
        while (free != 0)
        {
            uint field = free & (~free + 1);
            free ^= field;
            children[count++] = worker.Fork<Queens, long>(new(
                size, row + 1, columns | field, (left | field) << 1, (right | field) >> 1));
        }

        long ways = 0;
        for (int i = count - 1; i >= 0; i--)
            ways += worker.Join(children[i]);
        return ways;
    }
}
