namespace Rookery.Traces.Auditing;

/// <summary>A set of numbers from 0, one bit each: what remains of a task that has ended. Mutable.</summary>
internal sealed class NumberSet
{
    private const int PageBits = 15;

    // In pages, so that one large number in a broken trace costs a page and not all below it.
    private readonly Dictionary<int, ulong[]> _pages = [];

    /// <summary>Whether a number is in the set.</summary>
    public bool Contains(int number) =>
        _pages.TryGetValue(number >> PageBits, out ulong[]? page) && (page[Word(number)] & Bit(number)) != 0;

    /// <summary>Puts a number into the set.</summary>
    public void Add(int number)
    {
        if (!_pages.TryGetValue(number >> PageBits, out ulong[]? page))
            _pages.Add(number >> PageBits, page = new ulong[(1 << PageBits) / 64]);
        page[Word(number)] |= Bit(number);
    }

    private static int Word(int number) => (number & ((1 << PageBits) - 1)) >> 6;

    private static ulong Bit(int number) => 1UL << (number & 63);
}
