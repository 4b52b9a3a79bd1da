namespace Rookery.Checking.Properties;

/// <summary>Decides whether a history is linearizable (Herlihy and Wing 1990).</summary>
/// <remarks>
/// Each operation must seem to happen at one moment between its begin and its end; operations that have not ended may
/// have happened or not. The search (Wing and Gong 1993) tries every order that respects time: which operation could
/// have been first, then which second, and so on, going back where the answers do not fit. Where the same operations
/// have happened and the same items are left, it does not try again.
/// <para>
/// Example: puts 1 and 2 one after the other, then one take at the other end answers 2: no order fits, for a queue
/// gives 1 first.
/// </para>
/// </remarks>
internal sealed class Linearizer
{
    private readonly LinearizableCall[] _calls;
    private readonly ulong[] _before;
    private readonly int[] _items;
    private readonly HashSet<(ulong, UInt128)> _tried = [];
    private int _first;
    private int _end;

    private Linearizer(LinearizableCall[] calls)
    {
        _calls = calls;
        _before = new ulong[calls.Length];
        for (int at = 0; at < calls.Length; at++)
        {
            for (int other = 0; other < calls.Length; other++)
            {
                if (other != at && calls[other].EndsBefore(calls[at]))
                    _before[at] |= 1UL << other;
            }
        }

        // Items lie around the middle, so that both ends can grow.
        _items = new int[(2 * calls.Length) + 2];
        _first = _end = calls.Length + 1;
    }

    /// <summary>Whether some order of the calls explains all answers.</summary>
    public static bool IsLinearizable(ReadOnlySpan<LinearizableCall> calls)
    {
        // Which calls are left does not matter where they all are of no effect.
        return new Linearizer(calls.ToArray()).Search(0);
    }

    private bool Search(ulong done)
    {
        bool isComplete = true;
        for (int at = 0; at < _calls.Length; at++)
            isComplete &= (done >> at & 1) != 0 || !_calls[at].HasEnded;
        if (isComplete)
            return true;
        if (Contents() is { } contents && !_tried.Add((done, contents)))
            return false;
        for (int at = 0; at < _calls.Length; at++)
        {
            bool isPossible = (done >> at & 1) == 0 && (_before[at] & ~done) == 0;
            if (isPossible && TryCall(at, done | (1UL << at)))
                return true;
        }

        return false;
    }

    private bool TryCall(int at, ulong done)
    {
        ref readonly LinearizableCall call = ref _calls[at];
        if (call.MayBeNothing && Search(done))
            return true;
        switch (call.Role)
        {
            case CallRole.PutBottom when !call.IsRefused:
                _items[_end++] = at;
                if (Search(done))
                    return true;
                _end--;
                return false;
            case CallRole.TakeBottom when _end > _first && Fits(call, _items[_end - 1]):
                int last = _items[--_end];
                if (Search(done))
                    return true;
                _items[_end++] = last;
                return false;
            case CallRole.TakeTop when _end > _first && Fits(call, _items[_first]):
                int top = _items[_first++];
                if (Search(done))
                    return true;
                _items[--_first] = top;
                return false;
            case CallRole.TakeBottom or CallRole.TakeTop when _end == _first:
                return (!call.HasEnded || call.IsEmpty) && Search(done);
            default:
                return false;
        }
    }

    private bool Fits(in LinearizableCall call, int item) =>
        !call.HasEnded || (call.Value is { } value && value == _calls[item].Argument);

    /// <summary>The items as one number; null when there are too many to write so.</summary>
    private UInt128? Contents()
    {
        if (_end - _first > 20)
            return null;
        UInt128 contents = 1;
        for (int at = _first; at < _end; at++)
            contents = (contents << 6) | (uint)_items[at];
        return contents;
    }
}
