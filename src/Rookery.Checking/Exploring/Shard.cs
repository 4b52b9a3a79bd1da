using System.Runtime.CompilerServices;

namespace Rookery.Checking.Exploring;

/// <summary>A part of the stored states: those whose hash falls to it.</summary>
/// <remarks>
/// Mutable; touched by one part of the work at a time. A state costs its words, 4 bytes for where it was found from,
/// and 8 bytes a table entry at a load of at most three quarters: for two words, about 33 bytes. Table entries hold
/// half of the hash, so that few lookups compare words in vain and growing the table reads no state.
/// </remarks>
internal sealed class Shard
{
    private const int ChunkBits = 11;
    private const int ChunkMask = (1 << ChunkBits) - 1;
    private const int TableMin = 256;

    private readonly int _words;
    private readonly List<ulong[]> _chunks = [];
    private readonly List<uint[]> _parents = [];
    private ulong[] _table = new ulong[TableMin];

    public Shard(int words) => _words = words;

    public int Count { get; private set; }

    /// <summary>Bytes that it takes.</summary>
    public long Bytes => (_chunks.Count * ((long)_words * 8 + 4) << ChunkBits) + _table.Length * 8L;

    public ReadOnlySpan<ulong> this[int at] =>
        _chunks[at >> ChunkBits].AsSpan((at & ChunkMask) * _words, _words);

    /// <summary>From which state it was found.</summary>
    public uint ParentOf(int at) => _parents[at >> ChunkBits][at & ChunkMask];

    /// <summary>Where a state is; -1 when it is not there.</summary>
    public int Find(ReadOnlySpan<ulong> state, uint hash) => (int)(_table[Slot(state, hash)] & uint.MaxValue) - 1;

    /// <summary>Adds a state unless it is there already.</summary>
    public void Add(ReadOnlySpan<ulong> state, uint hash, uint parent)
    {
        int slot = Slot(state, hash);
        if (_table[slot] != 0)
            return;
        int at = Count++;
        if ((at & ChunkMask) == 0)
        {
            _chunks.Add(GC.AllocateUninitializedArray<ulong>(_words << ChunkBits));
            _parents.Add(GC.AllocateUninitializedArray<uint>(1 << ChunkBits));
        }

        state.CopyTo(_chunks[at >> ChunkBits].AsSpan((at & ChunkMask) * _words, _words));
        _parents[at >> ChunkBits][at & ChunkMask] = parent;
        _table[slot] = ((ulong)hash << 32) | (uint)Count;
        if (Count > _table.Length / 4 * 3)
            Grow();
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private int Slot(ReadOnlySpan<ulong> state, uint hash)
    {
        ulong[] table = _table;
        int mask = table.Length - 1;
        int slot = (int)(hash & (uint)mask);
        while (true)
        {
            ulong entry = table[slot];
            if (entry == 0)
                return slot;
            if ((uint)(entry >> 32) == hash && this[(int)(entry & uint.MaxValue) - 1].SequenceEqual(state))
                return slot;
            slot = (slot + 1) & mask;
        }
    }

    private void Grow()
    {
        var old = _table;
        _table = new ulong[old.Length * 2];
        int mask = _table.Length - 1;
        foreach (ulong entry in old)
        {
            if (entry == 0)
                continue;
            int slot = (int)((uint)(entry >> 32) & (uint)mask);
            while (_table[slot] != 0)
                slot = (slot + 1) & mask;
            _table[slot] = entry;
        }
    }
}
