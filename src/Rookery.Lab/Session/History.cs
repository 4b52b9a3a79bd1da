namespace Rookery.Lab.Session;

/// <summary>What was, and what was taken back: for undo and redo.</summary>
/// <typeparam name="T">A value; equal ones next to each other are kept once.</typeparam>
internal sealed class History<T>
    where T : class
{
    private const int KeptMax = 200;

    private readonly LinkedList<T> _before = new();
    private readonly Stack<T> _after = new();

    /// <summary>Begins with a value that can always be gone back to.</summary>
    public History(T first) => (First, Now) = (first, first);

    /// <summary>The value that everything began with.</summary>
    public T First { get; private set; }

    /// <summary>The value at present.</summary>
    public T Now { get; private set; }

    /// <summary>Whether something can be taken back.</summary>
    public bool CanUndo => _before.Count > 0;

    /// <summary>Whether something that was taken back can be done again.</summary>
    public bool CanRedo => _after.Count > 0;

    /// <summary>Makes a change that can be taken back.</summary>
    /// <param name="next">The new value.</param>
    /// <param name="joins">Whether it goes on with the last change, such as typing one more letter.</param>
    public void Change(T next, bool joins = false)
    {
        if (next.Equals(Now))
            return;
        if (!joins || _before.Count == 0)
            _before.AddLast(Now);
        if (_before.Count > KeptMax)
            _before.RemoveFirst();
        _after.Clear();
        Now = next;
    }

    /// <summary>Takes the last change back; nothing happens when there is none.</summary>
    public void Undo()
    {
        if (_before.Last is not { } last)
            return;
        _after.Push(Now);
        Now = last.Value;
        _before.RemoveLast();
    }

    /// <summary>Does again what was taken back; nothing happens when nothing was.</summary>
    public void Redo()
    {
        if (!_after.TryPop(out T? next))
            return;
        _before.AddLast(Now);
        Now = next;
    }

    /// <summary>Forgets everything and begins anew.</summary>
    public void Begin(T first)
    {
        _before.Clear();
        _after.Clear();
        (First, Now) = (first, first);
    }
}
