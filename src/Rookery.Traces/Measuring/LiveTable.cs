namespace Rookery.Traces.Measuring;

/// <summary>
/// One value for each live task, found by the task's number; memory grows with the tasks that are alive.
/// </summary>
/// <remarks>
/// Values lie close together in slots that are used again; a page of 256 consecutive numbers says which slots they
/// have, and serves other numbers when all of its tasks have ended. With a value a number in the pages instead, a
/// thousand workers, each at another place of the tree, touched some 200 MB and took three times as long an event.
/// References stay valid while the table grows. Mutable, for one thread.
/// </remarks>
internal sealed class LiveTable<T>
    where T : struct
{
    private const int PageBits = 8;
    private const int PageMask = (1 << PageBits) - 1;

    // A slot plus one for each number; 0 for none.
    private int[]?[] _pages = new int[]?[16];
    private int[] _endedCounts = new int[16];
    // Pages without a slot, all 0, to be used again.
    private readonly Stack<int[]> _sparePages = new();
    private T[]?[] _slots = [];
    private int[] _freeSlots = new int[16];
    private int _freeCount;
    private int _slotCount;

    /// <summary>The task's value; a new one is <c>default</c>.</summary>
    /// <param name="task">Number of the task, at least 0.</param>
    public ref T this[int task]
    {
        get
        {
            int page = task >> PageBits;
            int slot = page < _pages.Length && _pages[page] is { } found ? found[task & PageMask] - 1 : -1;
            if (slot < 0)
                slot = Enter(task);
            return ref _slots[slot >> PageBits]![slot & PageMask];
        }
    }

    /// <summary>Says that the task's value is not needed any more.</summary>
    public void Drop(int task)
    {
        int page = task >> PageBits;
        if (page >= _pages.Length || _pages[page] is not { } numbers || numbers[task & PageMask] == 0)
            return;
        int slot = numbers[task & PageMask] - 1;
        numbers[task & PageMask] = 0;
        _slots[slot >> PageBits]![slot & PageMask] = default;
        if (_freeCount == _freeSlots.Length)
            Array.Resize(ref _freeSlots, _freeCount * 2);
        _freeSlots[_freeCount++] = slot;
        if (++_endedCounts[page] > PageMask)
        {
            _sparePages.Push(numbers);
            _pages[page] = null;
        }
    }

    private int Enter(int task)
    {
        int page = task >> PageBits;
        if (page >= _pages.Length)
        {
            int length = Math.Max(page + 1, _pages.Length * 2);
            Array.Resize(ref _pages, length);
            Array.Resize(ref _endedCounts, length);
        }

        int slot = _freeCount > 0 ? _freeSlots[--_freeCount] : _slotCount++;
        if (slot >> PageBits >= _slots.Length)
            Array.Resize(ref _slots, Math.Max(4, _slots.Length * 2));
        _slots[slot >> PageBits] ??= new T[1 << PageBits];
        int[] numbers = _pages[page] ??= _sparePages.TryPop(out int[]? spare) ? spare : new int[1 << PageBits];
        numbers[task & PageMask] = slot + 1;
        return slot;
    }
}
