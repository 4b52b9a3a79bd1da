using System.Globalization;
using Rookery.Checking.Syntax;
using Rookery.Notation.Expressions;

namespace Rookery.Checking.Tests.Naive;

/// <summary>
/// Explores scenarios in the plainest way: lists, dictionaries, text to compare states, one at a time.
/// </summary>
/// <remarks>
/// Written from docs/checker.md alone, for sequential consistency and store buffers. It shares the parser with the
/// checker and nothing else.
/// </remarks>
internal sealed class NaiveExplorer
{
    private readonly PlainCode _code;
    private readonly MemoryModel _model;
    private readonly HashSet<string> _seen = new(StringComparer.Ordinal);
    private readonly Stack<NaiveState> _open = new();

    public NaiveExplorer(PlainCode code, MemoryModel model)
    {
        (_code, _model) = (code, model);
        var start = new NaiveState
        {
            Lines = [.. code.Threads.Select(_ => 0)],
            Locals = [.. code.Threads.Select(_ => new SortedDictionary<string, long>(StringComparer.Ordinal))],
            Memory = new(StringComparer.Ordinal),
            Buffers = [.. code.Threads.Select(_ => new List<(string, long)>())],
            Results = [],
        };
        foreach (var memory in code.Memory)
        {
            for (int at = 0; at < memory.Size; at++)
                start.Memory[PlaceOf(memory.Name, at)] = memory.Initial;
        }

        for (int thread = 0; thread < code.Threads.Count; thread++)
            GoOn(start, thread);
        Visit(start);
        while (_open.Count > 0)
            Expand(_open.Pop());
    }

    public int States => _seen.Count;

    public int Transitions { get; private set; }

    /// <summary>Results and observed places of final states.</summary>
    public HashSet<string> Outcomes { get; } = new(StringComparer.Ordinal);

    public bool HasDeadlock { get; private set; }

    private void Visit(NaiveState state)
    {
        if (_seen.Add(state.Text(_model == MemoryModel.Pso)))
            _open.Push(state);
    }

    private void Expand(NaiveState state)
    {
        var next = new List<NaiveState>();
        for (int thread = 0; thread < _code.Threads.Count; thread++)
        {
            if (TryStep(state, thread) is { } stepped)
                next.Add(stepped);
            next.AddRange(Flushes(state, thread));
        }

        Transitions += next.Count;
        foreach (var one in next)
            Visit(one);
        if (next.Count > 0)
            return;
        if (_code.Threads.Select((lines, at) => lines[state.Lines[at]].Kind == PlainKind.End).All(ended => ended))
            Outcomes.Add(OutcomeOf(state));
        else
            HasDeadlock = true;
    }

    private string OutcomeOf(NaiveState state)
    {
        var observed = state.Memory.Where(pair => _code.Observed.Contains(pair.Key.Split('[')[0]))
            .Select(pair => $"{pair.Key}={pair.Value.ToString(CultureInfo.InvariantCulture)}");
        return $"{string.Join(';', state.Results.Select(pair => pair.Value))};{string.Join(',', observed)}";
    }

    private IEnumerable<NaiveState> Flushes(NaiveState state, int thread)
    {
        var buffer = state.Buffers[thread];
        var done = new HashSet<string>(StringComparer.Ordinal);
        for (int at = 0; at < buffer.Count && buffer[at].Place.Length > 0; at++)
        {
            if (!done.Add(buffer[at].Place) || (_model == MemoryModel.Tso && at > 0))
                continue;
            var next = state.Copy();
            next.Memory[buffer[at].Place] = buffer[at].Value;
            next.Buffers[thread].RemoveAt(at);
            while (next.Buffers[thread].Count > 0 && next.Buffers[thread][0].Place.Length == 0)
                next.Buffers[thread].RemoveAt(0);
            yield return next;
        }
    }

    private NaiveState? TryStep(NaiveState before, int thread)
    {
        var line = _code.Threads[thread][before.Lines[thread]];
        if (line.Kind == PlainKind.End)
            return null;
        bool isHeavy = line.Kind is PlainKind.Fence or PlainKind.Lock or PlainKind.Unlock or PlainKind.Update
            || _code.Access(line)?.Node is CallExpression;
        if (isHeavy && before.Buffers[thread].Count > 0)
            return null;
        if (line.Kind == PlainKind.Lock && before.Memory[line.Name] != 0)
            return null;
        var state = before.Copy();
        Execute(state, thread, line);
        GoOn(state, thread);
        return state;
    }

    /// <summary>Executes lines that make no shared access.</summary>
    private void GoOn(NaiveState state, int thread)
    {
        while (true)
        {
            var line = _code.Threads[thread][state.Lines[thread]];
            if (line.Kind == PlainKind.End || _code.IsAccess(line, IsFenceStep))
                return;
            Execute(state, thread, line);
        }
    }

    private bool IsFenceStep(AccessOrder order) => _model != MemoryModel.Sc && order == AccessOrder.Full;

    private void Execute(NaiveState state, int thread, PlainLine line)
    {
        int next = state.Lines[thread] + 1;
        var locals = state.Locals[thread];
        switch (line.Kind)
        {
            case PlainKind.Let:
                locals[line.Name] = Value(state, thread, line.Values[0]);
                break;
            case PlainKind.Store:
                int at = line.Index is null ? 0 : (int)Value(state, thread, line.Index);
                Write(state, thread, PlaceOf(line.Name, at), Value(state, thread, line.Values[0]));
                break;
            case PlainKind.Update:
                Value(state, thread, line.Values[0]);
                break;
            case PlainKind.Lock or PlainKind.Unlock:
                state.Memory[line.Name] = line.Kind == PlainKind.Lock ? 1 : 0;
                break;
            case PlainKind.Fence:
                bool isKept = _model == MemoryModel.Pso && line.Order == AccessOrder.Release
                    && state.Buffers[thread].Count > 0 && state.Buffers[thread][^1].Place.Length > 0;
                if (isKept)
                    state.Buffers[thread].Add(("", 0));
                break;
            case PlainKind.Goto:
                next = line.Target;
                break;
            case PlainKind.Branch:
                next = Value(state, thread, line.Values[0]) != 0 ? next : line.Target;
                break;
            default:
                Return(state, thread, line);
                next = NextInvocation(thread, line.Invocation);
                break;
        }

        state.Lines[thread] = next;
    }

    private void Return(NaiveState state, int thread, PlainLine line)
    {
        var results = line.Values.Select(value =>
            value is NameExpression { Name: "empty" or "lost" or "full" or "done" } word
            && !state.Locals[thread].ContainsKey(word.Name)
                ? word.Name
                : Value(state, thread, value).ToString(CultureInfo.InvariantCulture));
        state.Results[line.Invocation] = string.Join(',', results);
        state.Locals[thread].Clear();
    }

    private int NextInvocation(int thread, int invocation)
    {
        var lines = _code.Threads[thread];
        int at = 0;
        while (lines[at].Kind != PlainKind.End && lines[at].Invocation <= invocation)
            at++;
        return at;
    }

    private long Value(NaiveState state, int thread, Expression expression) => PlainValue.Of(
        expression,
        name => _code.IsShared(name)
            ? Read(state, thread, name)
            : state.Locals[thread].GetValueOrDefault(name),
        (node, at) => node is IndexExpression index
            ? Read(state, thread, PlaceOf(index.Name, (int)at))
            : Update(state, thread, (CallExpression)node, (int)at));

    private long Update(NaiveState state, int thread, CallExpression call, int at)
    {
        string name = call.Arguments[0] is IndexExpression index
            ? index.Name : ((NameExpression)call.Arguments[0]).Name;
        string place = PlaceOf(name, at);
        long old = state.Memory[place];
        long first = Value(state, thread, call.Arguments[1]);
        switch (call.Name)
        {
            case "cas":
                long wanted = Value(state, thread, call.Arguments[2]);
                if (old == first)
                    state.Memory[place] = wanted;
                return old == first ? 1 : 0;
            case "add":
                state.Memory[place] = old + first;
                return old;
            default:
                state.Memory[place] = first;
                return old;
        }
    }

    private static long Read(NaiveState state, int thread, string place)
    {
        int at = state.Buffers[thread].FindLastIndex(one => one.Place == place);
        return at >= 0 ? state.Buffers[thread][at].Value : state.Memory[place];
    }

    private void Write(NaiveState state, int thread, string place, long value)
    {
        if (_model == MemoryModel.Sc)
            state.Memory[place] = value;
        else
            state.Buffers[thread].Add((place, value));
    }

    private string PlaceOf(string name, int at) =>
        _code.Memory.First(memory => memory.Name == name).IsArray
            ? string.Create(CultureInfo.InvariantCulture, $"{name}[{at}]") : name;
}
