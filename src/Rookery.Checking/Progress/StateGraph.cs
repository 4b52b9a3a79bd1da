using Rookery.Checking.Exploring;

namespace Rookery.Checking.Progress;

/// <summary>All states of a search with the steps between them.</summary>
internal sealed class StateGraph : IStepSink
{
    private const int StatesAtOnce = 256;

    private readonly Search _search;
    private readonly List<GraphEdge> _edges = [];
    private readonly int[] _first;
    private readonly uint[] _ids;

    public StateGraph(Search search)
    {
        _search = search;
        _ids = [.. search.Ids()];
        _first = new int[_ids.Length + 1];
    }

    /// <summary>Finds the steps; before anything else.</summary>
    public IEnumerable<Portion> Work()
    {
        var stepper = new Stepper(_search.Machine);
        for (int state = 0; state < _ids.Length; state++)
        {
            _first[state] = _edges.Count;
            stepper.Expand(_search.StateOf(_ids[state]), this);
            if (state % StatesAtOnce == StatesAtOnce - 1)
                yield return Portion.Rest;
        }

        _first[^1] = _edges.Count;
    }

    public int Count => _ids.Length;

    public ScenarioMachine Machine => _search.Machine;

    public ReadOnlySpan<ulong> StateOf(int state) => _search.StateOf(_ids[state]);

    /// <summary>Steps out of a state.</summary>
    public ReadOnlySpan<GraphEdge> From(int state) =>
        System.Runtime.InteropServices.CollectionsMarshal.AsSpan(_edges)[_first[state].._first[state + 1]];

    /// <summary>How many operations a thread has ended in a state.</summary>
    public int OrderOf(int state, int thread) => Machine.EndedCount(StateOf(state), thread);

    /// <summary>The line of the next access of a thread.</summary>
    public int LineOf(int state, int thread) =>
        Machine.Code.Threads[thread].Points[Machine.PointOf(StateOf(state), thread)].Line;

    /// <inheritdoc/>
    public void Take(in Step step, ReadOnlySpan<ulong> next)
    {
        uint id = _search.Find(next) ?? throw new InvalidOperationException("A step leads out of the state graph.");
        _edges.Add(new(_search.PositionOf(id), step.Kind == StepKind.Drift ? -1 : step.Thread));
    }

    /// <inheritdoc/>
    public void Fail(in Step step, in Fault fault)
    {
    }
}
