namespace Rookery.Checking.Exploring;

/// <summary>A set of sequences of numbers, all of one length, each with a number of its own.</summary>
/// <remarks>Mutable. Open addressing with our own hash, so that the order is the same everywhere.</remarks>
internal sealed class KeyTable(int length)
{
    private long[] _keys = new long[length * 16];
    private int[] _table = new int[64];
    private int[] _values = new int[16];

    public int Count { get; private set; }

    public ReadOnlySpan<long> this[int at] => _keys.AsSpan(at * length, length);

    /// <summary>A value that belongs to a key.</summary>
    public ref int ValueAt(int at) => ref _values[at];

    /// <summary>Where a key is; it is added when it is new.</summary>
    public int Add(ReadOnlySpan<long> key, out bool isNew)
    {
        int slot = Slot(key);
        isNew = _table[slot] == 0;
        if (!isNew)
            return _table[slot] - 1;
        if ((Count + 1) * length > _keys.Length)
            Array.Resize(ref _keys, _keys.Length * 2);
        if (Count == _values.Length)
            Array.Resize(ref _values, _values.Length * 2);
        key.CopyTo(_keys.AsSpan(Count * length));
        _table[slot] = ++Count;
        if (Count * 2 > _table.Length)
            Grow();
        return Count - 1;
    }

    private int Slot(ReadOnlySpan<long> key)
    {
        int mask = _table.Length - 1;
        int slot = (int)(Hash(key) & (ulong)mask);
        while (_table[slot] != 0 && !this[_table[slot] - 1].SequenceEqual(key))
            slot = (slot + 1) & mask;
        return slot;
    }

    private void Grow()
    {
        _table = new int[_table.Length * 2];
        for (int at = 0; at < Count; at++)
            _table[Slot(this[at])] = at + 1;
    }

    private static ulong Hash(ReadOnlySpan<long> key) =>
        StateHash.Of(System.Runtime.InteropServices.MemoryMarshal.Cast<long, ulong>(key));
}
