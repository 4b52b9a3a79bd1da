using Rookery.Pool;

namespace Rookery.Samples;

/// <summary>Merge sort: halves are sorted in parallel, and merged by whoever joins them.</summary>
internal sealed class SortSample() : Sample("sort")
{
    private const int Grain = 1 << 12;

    private readonly int[] _numbers = Shuffled(500_000);

    public override long Alone() => Sorted(items => Array.Sort(items));

    public override long OnPool(WorkerPool pool) => Sorted(items => pool.Run(
        static (worker, piece) => Sort(worker, piece), new Piece(items, new int[items.Length], 0, items.Length)));

    public override long OnTasks() => Sorted(items => Sort(new(items, new int[items.Length], 0, items.Length)));

    private static void Sort(Worker worker, Piece piece)
    {
        if (piece.To - piece.From <= Grain)
        {
            Array.Sort(piece.Items, piece.From, piece.To - piece.From);
            return;
        }

        var left = worker.Fork(Sort, piece.Left);
        Sort(worker, piece.Right);
        worker.Join(left);
        piece.Merge();
    }

    private static void Sort(Piece piece)
    {
        if (piece.To - piece.From <= Grain)
        {
            Array.Sort(piece.Items, piece.From, piece.To - piece.From);
            return;
        }

        Task left = Task.Run(() => Sort(piece.Left));
        Sort(piece.Right);
        left.Wait();
        piece.Merge();
    }

    private static int[] Shuffled(int count)
    {
        var random = new Random(11);
        return [.. Enumerable.Range(0, count).Select(_ => random.Next())];
    }

    private long Sorted(Action<int[]> sort)
    {
        int[] items = [.. _numbers];
        sort(items);
        long sum = 0;
        for (int i = 0; i < items.Length; i++)
            sum = unchecked((sum * 31) + items[i]);
        return sum;
    }

    private readonly record struct Piece(int[] Items, int[] Space, int From, int To)
    {
        public Piece Left => this with { To = Middle };

        public Piece Right => this with { From = Middle };

        private int Middle => From + ((To - From) / 2);

        public void Merge()
        {
            (int a, int b) = (From, Middle);
            for (int at = From; at < To; at++)
                Space[at] = b == To || (a < Middle && Items[a] <= Items[b]) ? Items[a++] : Items[b++];
            Array.Copy(Space, From, Items, From, To - From);
        }
    }
}
