namespace Rookery.Pool.Tests.Programs;

/// <summary>Sorts a piece of an array by halves; short pieces by insertion.</summary>
internal readonly struct MergeSort(int[] items, int[] space, int from, int to) : IForkTask<Nothing>
{
    private const int Short = 16;

    /// <inheritdoc/>
    public Nothing Run(Worker worker)
    {
        if (to - from <= Short)
        {
            for (int i = from + 1; i < to; i++)
            {
                for (int k = i; k > from && items[k - 1] > items[k]; k--)
                    (items[k - 1], items[k]) = (items[k], items[k - 1]);
            }

            return default;
        }

        int middle = from + ((to - from) / 2);
        var left = worker.Fork<MergeSort, Nothing>(new(items, space, from, middle));
        new MergeSort(items, space, middle, to).Run(worker);
        worker.Join(left);
        (int a, int b) = (from, middle);
        for (int at = from; at < to; at++)
            space[at] = b == to || (a < middle && items[a] <= items[b]) ? items[a++] : items[b++];
        Array.Copy(space, from, items, from, to - from);
        return default;
    }
}
