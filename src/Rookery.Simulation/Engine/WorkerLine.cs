namespace Rookery.Simulation.Engine;

/// <summary>Workers that stand in line, first come first; anyone can leave the line from the middle at once.</summary>
internal sealed class WorkerLine
{
    private readonly List<(int Before, int After)> _links = [];
    private int _first = -1;
    private int _last = -1;

    public int Count { get; private set; }

    public int First => _first;

    public bool Contains(int worker) =>
        _first == worker || (worker < _links.Count && _links[worker].Before >= 0);

    public void Add(int worker)
    {
        while (_links.Count <= worker)
            _links.Add((-1, -1));
        _links[worker] = (_last, -1);
        if (_last >= 0)
            _links[_last] = (_links[_last].Before, worker);
        else
            _first = worker;
        _last = worker;
        Count++;
    }

    public void Remove(int worker)
    {
        (int before, int after) = _links[worker];
        if (before >= 0)
            _links[before] = (_links[before].Before, after);
        else
            _first = after;
        if (after >= 0)
            _links[after] = (before, _links[after].After);
        else
            _last = before;
        _links[worker] = (-1, -1);
        Count--;
    }
}
