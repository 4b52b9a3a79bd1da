namespace Rookery.Simulation.Engine;

/// <summary>A queue of activations with two ends: the oldest at the top, the newest at the bottom.</summary>
/// <remarks>A growing ring, allocated at the first push: most workers of a large machine never queue much.</remarks>
internal sealed class TaskDeque
{
    private int[] _ring = [];
    private int _top;

    public int Count { get; private set; }

    public int Oldest => _ring[_top];

    public int Newest => _ring[(_top + Count - 1) & (_ring.Length - 1)];

    public void Push(int activation)
    {
        if (Count == _ring.Length)
            Grow();
        _ring[(_top + Count) & (_ring.Length - 1)] = activation;
        Count++;
    }

    public int TakeOldest()
    {
        int activation = _ring[_top];
        _top = (_top + 1) & (_ring.Length - 1);
        Count--;
        return activation;
    }

    public int TakeNewest()
    {
        Count--;
        return _ring[(_top + Count) & (_ring.Length - 1)];
    }

    private void Grow()
    {
        int[] larger = new int[Math.Max(8, _ring.Length * 2)];
        for (int i = 0; i < Count; i++)
            larger[i] = _ring[(_top + i) & (_ring.Length - 1)];
        _ring = larger;
        _top = 0;
    }
}
