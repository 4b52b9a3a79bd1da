using Rookery.Notation.Randomness;

namespace Rookery.Programs.Analyses;

/// <summary>Remembers what tasks cost: an open hash table over definition and arguments.</summary>
/// <remarks>
/// Mutable. All keys lie in one array, so an entry costs no object. The hash is our own, so that a run does the same
/// everywhere.
/// </remarks>
/// <param name="entriesMax">Entries kept; further ones are dropped.</param>
internal sealed class CostMemo(int entriesMax)
{
    private Slot[] _slots = new Slot[1 << 10];
    private Entry[] _entries = new Entry[1 << 8];
    private long[] _keys = new long[1 << 10];
    private int _count;
    private int _keyLength;

    /// <summary>Looks for an entry.</summary>
    /// <param name="definition">The task, see <see cref="CostAnalysis"/>.</param>
    /// <param name="key">Its arguments.</param>
    /// <returns>Which entry, or -1.</returns>
    public int Find(int definition, ReadOnlySpan<long> key) =>
        _slots[SlotOf(definition, key, Hash(definition, key))].EntryPlusOne - 1;

    public ref readonly Cost CostOf(int entry) => ref _entries[entry].Cost;

    /// <summary>What was stored with an entry after its key.</summary>
    public ReadOnlySpan<long> ExtraOf(int entry) =>
        _keys.AsSpan(_entries[entry].KeyStart + _entries[entry].KeyLength, _entries[entry].ExtraLength);

    /// <summary>Keeps a cost, unless the table is full or has it.</summary>
    public void Add(int definition, ReadOnlySpan<long> key, ReadOnlySpan<long> extra, in Cost cost)
    {
        if (_count == entriesMax || _keyLength > int.MaxValue / 4)
            return;
        ulong hash = Hash(definition, key);
        int slot = SlotOf(definition, key, hash);
        if (_slots[slot].EntryPlusOne > 0)
            return;
        if (_count == _entries.Length)
            Array.Resize(ref _entries, _count * 2);
        while (_keyLength + key.Length + extra.Length > _keys.Length)
            Array.Resize(ref _keys, _keys.Length * 2);
        _entries[_count] = new()
        {
            Definition = definition,
            KeyStart = _keyLength,
            KeyLength = key.Length,
            ExtraLength = extra.Length,
            Cost = cost,
        };
        key.CopyTo(_keys.AsSpan(_keyLength));
        extra.CopyTo(_keys.AsSpan(_keyLength + key.Length));
        _keyLength += key.Length + extra.Length;
        _slots[slot] = new((uint)(hash >> 32), ++_count);
        if (_count * 2 > _slots.Length)
            Rehash();
    }

    private int SlotOf(int definition, ReadOnlySpan<long> key, ulong hash)
    {
        int mask = _slots.Length - 1;
        uint fingerprint = (uint)(hash >> 32);
        int at = (int)(hash & (ulong)mask);
        while (_slots[at].EntryPlusOne > 0)
        {
            if (_slots[at].Fingerprint == fingerprint && IsEntry(_slots[at].EntryPlusOne - 1, definition, key))
                break;
            at = (at + 1) & mask;
        }

        return at;
    }

    private bool IsEntry(int entry, int definition, ReadOnlySpan<long> key)
    {
        ref readonly var e = ref _entries[entry];
        return e.Definition == definition && key.SequenceEqual(_keys.AsSpan(e.KeyStart, e.KeyLength));
    }

    private void Rehash()
    {
        _slots = new Slot[_slots.Length * 2];
        for (int i = 0; i < _count; i++)
        {
            ref readonly var e = ref _entries[i];
            var key = _keys.AsSpan(e.KeyStart, e.KeyLength);
            ulong hash = Hash(e.Definition, key);
            _slots[SlotOf(e.Definition, key, hash)] = new((uint)(hash >> 32), i + 1);
        }
    }

    private static ulong Hash(int definition, ReadOnlySpan<long> key)
    {
        unchecked
        {
            ulong hash = SplitMix64.Mix((ulong)definition + 0x9e3779b97f4a7c15);
            foreach (long word in key)
                hash = SplitMix64.Mix(hash ^ ((ulong)word + 0x9e3779b97f4a7c15));
            return hash;
        }
    }

    /// <summary>A part of the hash beside the entry's number saves most looks at entries, which are far away.</summary>
    private readonly record struct Slot(uint Fingerprint, int EntryPlusOne);

    private struct Entry
    {
        public int Definition;
        public int KeyStart;
        public int KeyLength;
        public int ExtraLength;
        public Cost Cost;
    }
}
