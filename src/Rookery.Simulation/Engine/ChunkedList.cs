namespace Rookery.Simulation.Engine;

/// <summary>A list that grows without copying or doubling what it holds.</summary>
internal sealed class ChunkedList<T>
{
    private const int ChunkBits = 14;

    private readonly List<T[]> _chunks = [];
    private T[] _last = [];
    private int _used;

    public int Count { get; private set; }

    public T this[int index] => _chunks[index >> ChunkBits][index & ((1 << ChunkBits) - 1)];

    public void Add(T item)
    {
        if (_used == _last.Length)
            Grow();
        _last[_used++] = item;
        Count++;
    }

    // The first chunk starts small, since most runs are.
    private void Grow()
    {
        if (_chunks.Count == 1 && _last.Length < 1 << ChunkBits)
        {
            Array.Resize(ref _last, _last.Length * 2);
            _chunks[0] = _last;
            return;
        }

        _last = new T[_chunks.Count == 0 ? 64 : 1 << ChunkBits];
        _chunks.Add(_last);
        _used = 0;
    }
}
