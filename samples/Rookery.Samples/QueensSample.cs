using System.Numerics;
using Rookery.Pool;

namespace Rookery.Samples;

/// <summary>
/// In how many ways eleven queens stand on a board without attacking each other: 2680 (OEIS A000170).
/// </summary>
internal sealed class QueensSample() : Sample("queens")
{
    private const int Size = 11;
    private const int ForkedRows = 3;

    public override long Alone() => Count(new Board(0, 0, 0, 0));

    public override long OnPool(WorkerPool pool) => pool.Run(Count, new Board(0, 0, 0, 0));

    public override long OnTasks() => CountByTasks(new Board(0, 0, 0, 0));

    private static long Count(Board board)
    {
        long ways = board.Row == Size ? 1 : 0;
        foreach (Board next in board.Next())
            ways += Count(next);
        return ways;
    }

    private static long Count(Worker worker, Board board)
    {
        if (board.Row >= ForkedRows)
            return Count(board);
        var children = new Stack<ForkedCall<Board, long>>();
        foreach (Board next in board.Next())
            children.Push(worker.Fork(Count, next));
        long ways = 0;
        while (children.TryPop(out var child))
            ways += worker.Join(child);
        return ways;
    }

    private static long CountByTasks(Board board)
    {
        if (board.Row >= ForkedRows)
            return Count(board);
        Task<long>[] children = [.. board.Next().Select(next => Task.Run(() => CountByTasks(next)))];
        Task.WaitAll(children);
        return children.Sum(child => child.Result);
    }

    private readonly record struct Board(int Row, uint Columns, uint Left, uint Right)
    {
        public IEnumerable<Board> Next()
        {
            if (Row == Size)
                yield break;
            uint free = ~(Columns | Left | Right) & ((1u << Size) - 1);
            for (; free != 0; free &= free - 1)
            {
                uint field = 1u << BitOperations.TrailingZeroCount(free);
                yield return new(Row + 1, Columns | field, (Left | field) << 1, (Right | field) >> 1);
            }
        }
    }
}
