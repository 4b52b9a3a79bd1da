namespace Rookery.Traces.Measuring;

/// <summary>One value for each live task, found by the task's number; memory grows with the tasks that are alive.</summary>
/// <remarks>
/// Numbers are given out in rising order and each is given back once, so pages of 256 consecutive numbers fill up and are
/// dropped as a whole. A page that still holds one live task stays: long-lived tasks are ancestors, and they are few.
/// </remarks>
internal sealed class LiveTable<T>
    where T : struct
{
    private const int PageBits = 8;

    private T[]?[] _pages = new T[]?[16];
    private int[] _endedCounts = new int[16];

    /// <summary>The task's value; a new one is <c>default</c>.</summary>
    /// <param name="task">Number of the task, at least 0.</param>
    public ref T this[int task]
    {
        get
        {
            int page = task >> PageBits;
            if (page >= _pages.Length)
                Grow(page);
            return ref (_pages[page] ??= new T[1 << PageBits])[task & ((1 << PageBits) - 1)];
        }
    }

    /// <summary>Says that the task's value is not needed any more.</summary>
    public void Drop(int task)
    {
        int page = task >> PageBits;
        this[task] = default;
        if (++_endedCounts[page] >= 1 << PageBits)
            _pages[page] = null;
    }

    private void Grow(int page)
    {
        int length = Math.Max(page + 1, _pages.Length * 2);
        Array.Resize(ref _pages, length);
        Array.Resize(ref _endedCounts, length);
    }
}
