namespace Rookery.Checking.States;

/// <summary>Which numbers a state consists of, and between which bounds each has been seen.</summary>
/// <remarks>
/// Mutable. Bounds grow as exploring finds larger numbers; slots of threads that do the same share them, so that two
/// such threads can change places.
/// </remarks>
internal sealed class StateShape
{
    private readonly List<SlotKey> _keys = [];
    private readonly List<int> _groups = [];
    private readonly Dictionary<SlotKey, int> _groupOf = [];
    private readonly Dictionary<SlotKey, int> _slotOf = [];
    private readonly List<long> _initial = [];
    private readonly List<long> _low = [];
    private readonly List<long> _high = [];
    private readonly int[] _twins;

    public StateShape(IEnumerable<int> twins) => _twins = [.. twins];

    public int Count => _keys.Count;

    /// <summary>Adds a slot.</summary>
    /// <param name="key">What it is.</param>
    /// <param name="initial">What it holds at first.</param>
    /// <param name="high">The largest number that is known to come; at least the initial one.</param>
    /// <returns>Its number.</returns>
    public int Add(SlotKey key, long initial, long high = long.MinValue)
    {
        var shared = key.Permute(_twins);
        if (!_groupOf.TryGetValue(shared, out int group))
        {
            group = _low.Count;
            _groupOf.Add(shared, group);
            _low.Add(initial);
            _high.Add(initial);
        }

        _keys.Add(key);
        _groups.Add(group);
        _initial.Add(initial);
        _slotOf.Add(key, _keys.Count - 1);
        Widen(_keys.Count - 1, initial);
        Widen(_keys.Count - 1, Math.Max(initial, high));
        return _keys.Count - 1;
    }

    public SlotKey Key(int slot) => _keys[slot];

    public int Find(SlotKey key) => _slotOf.GetValueOrDefault(key, -1);

    public long Initial(int slot) => _initial[slot];

    public long Low(int slot) => _low[_groups[slot]];

    public long High(int slot) => _high[_groups[slot]];

    /// <summary>Makes room for a number.</summary>
    public void Widen(int slot, long value)
    {
        int group = _groups[slot];
        _low[group] = Math.Min(_low[group], value);
        _high[group] = Math.Max(_high[group], value);
    }

    /// <summary>Makes room for a number in a slot and in all that are likely to need it too.</summary>
    public void WidenFamily(int slot, long value)
    {
        var family = _keys[slot].Family();
        for (int one = 0; one < Count; one++)
        {
            if (_keys[one].Family() == family)
                Widen(one, value);
        }
    }

    /// <summary>Takes over what another shape has seen; a slot that it lacks gets the bounds of its family.</summary>
    public void WidenLike(StateShape other)
    {
        var families = new Dictionary<SlotKey, (long Low, long High)>();
        for (int slot = 0; slot < other.Count; slot++)
        {
            var family = other.Key(slot).Family();
            var (low, high) = families.GetValueOrDefault(family, (long.MaxValue, long.MinValue));
            families[family] = (Math.Min(low, other.Low(slot)), Math.Max(high, other.High(slot)));
        }

        for (int slot = 0; slot < Count; slot++)
        {
            int same = other.Find(_keys[slot]);
            if (same >= 0)
            {
                Widen(slot, other.Low(same));
                Widen(slot, other.High(same));
            }
            else if (families.TryGetValue(_keys[slot].Family(), out var seen))
            {
                Widen(slot, seen.Low);
                Widen(slot, seen.High);
            }
        }
    }
}
