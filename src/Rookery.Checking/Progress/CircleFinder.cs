using Rookery.Checking.Compiling;
using static System.FormattableString;

namespace Rookery.Checking.Progress;

/// <summary>Finds in a state graph what can repeat while an operation does not end.</summary>
internal sealed class CircleFinder
{
    private readonly StateGraph _graph;
    private readonly int[] _parts;

    public CircleFinder(StateGraph graph) => (_graph, _parts) = (graph, Components.Of(graph));

    /// <summary>The class of one call.</summary>
    public OperationProgress ClassOf(Invocation call)
    {
        int[] states = [.. Enumerable.Range(0, _graph.Count)
            .Where(state => _graph.OrderOf(state, call.Thread) == call.Order && !HasEnded(state, call))];
        if (Stuck(states, call) is { } stuck)
            return new(call.Operation, ProgressClass.Blocking, StuckReason(stuck, call));
        if (Circle(states, call) is { } circle)
            return new(
                call.Operation, ProgressClass.ObstructionFree,
                ReasonOf(ProgressReasonKind.GoesRound, call, _graph.LineOf(circle, call.Thread)));
        if (Return(states, call) is { } back)
            return new(call.Operation, ProgressClass.LockFree, back);
        return new(call.Operation, ProgressClass.WaitFree, new(ProgressReasonKind.LoopsEnd));
    }

    private bool HasEnded(int state, Invocation call) =>
        _graph.Machine.HasEnded(_graph.StateOf(state), call.Thread);

    /// <summary>A state from which the thread, alone with memory, cannot end the call; null for none.</summary>
    private int? Stuck(int[] states, Invocation call)
    {
        var canEnd = EndingAlone(states, call, -1, []);
        return states.Cast<int?>().FirstOrDefault(state => !canEnd.Contains(state!.Value));
    }

    /// <summary>States from which the thread can end the call alone without coming to one of some states.</summary>
    private HashSet<int> EndingAlone(int[] states, Invocation call, int except, HashSet<int> avoided)
    {
        var before = new Dictionary<int, List<int>>();
        var open = new Stack<int>();
        var canEnd = new HashSet<int>();
        foreach (int state in states)
        {
            foreach (var edge in _graph.From(state))
            {
                if (edge.Thread >= 0 && edge.Thread != call.Thread)
                    continue;
                if (_graph.OrderOf(edge.To, call.Thread) > call.Order)
                {
                    if (canEnd.Add(state))
                        open.Push(state);
                }
                else if (!avoided.Contains(edge.To) || edge.To == except)
                {
                    if (!before.TryGetValue(edge.To, out var list))
                        before.Add(edge.To, list = []);
                    list.Add(state);
                }
            }
        }

        while (open.Count > 0)
        {
            foreach (int state in before.GetValueOrDefault(open.Pop()) ?? [])
            {
                if (canEnd.Add(state))
                    open.Push(state);
            }
        }

        return canEnd;
    }

    /// <summary>A state on a circle in which the thread moves; null for none.</summary>
    private int? Circle(int[] states, Invocation call)
    {
        foreach (int state in states)
        {
            foreach (var edge in _graph.From(state))
            {
                if (edge.Thread == call.Thread && _parts[edge.To] == _parts[state])
                    return state;
            }
        }

        return null;
    }

    /// <summary>How the thread comes back to where it was, made to by others; null when it never does.</summary>
    private ProgressReason? Return(int[] states, Invocation call)
    {
        foreach (var same in states.GroupBy(state => OwnPart(state, call), StringComparer.Ordinal))
        {
            var members = same.ToHashSet();
            var endsAlone = EndingAlone(states, call, -1, members);
            int[] starts = [.. same.Where(endsAlone.Contains)];
            if (starts.Length > 0 && PathBack(starts, members, call) is { } path)
                return ReturnReason(path, call);
        }

        return null;
    }

    /// <summary>What the thread itself knows: its point and the values of its own that still matter.</summary>
    private string OwnPart(int state, Invocation call)
    {
        var machine = _graph.Machine;
        var words = _graph.StateOf(state);
        var parts = new List<string> { Invariant($"{machine.PointOf(words, call.Thread)}") };
        foreach (int slot in machine.Locals[call.Thread])
            parts.Add(Invariant($"{machine.Get(words, slot)}"));
        return string.Join(',', parts);
    }

    /// <summary>A shortest path on which the thread moves and comes back.</summary>
    private List<int>? PathBack(int[] starts, HashSet<int> members, Invocation call)
    {
        var from = new Dictionary<(int State, bool HasMoved), (int, bool)>();
        var open = new Queue<(int State, bool HasMoved)>();
        foreach (int start in starts)
        {
            from[(start, false)] = (-1, false);
            open.Enqueue((start, false));
        }

        while (open.Count > 0)
        {
            var at = open.Dequeue();
            foreach (var edge in _graph.From(at.State))
            {
                var next = (edge.To, at.HasMoved || edge.Thread == call.Thread);
                bool isOver = _graph.OrderOf(edge.To, call.Thread) > call.Order;
                if (isOver || !from.TryAdd(next, at))
                    continue;
                if (next.Item2 && members.Contains(edge.To))
                    return PathTo(next, from);
                open.Enqueue(next);
            }
        }

        return null;
    }

    private static List<int> PathTo(
        (int State, bool HasMoved) end, Dictionary<(int State, bool HasMoved), (int, bool)> from)
    {
        var path = new List<int>();
        for (var at = end; at.State >= 0; at = from[at])
            path.Add(at.State);
        path.Reverse();
        return path;
    }

    private ProgressReason ReasonOf(ProgressReasonKind kind, Invocation call, int line) => new(kind)
    {
        Call = call.Text,
        Thread = _graph.Machine.Code.Threads[call.Thread].Name,
        Line = line,
    };

    private ProgressReason StuckReason(int state, Invocation call)
    {
        var code = _graph.Machine.Code;
        return ReasonOf(ProgressReasonKind.Stuck, call, _graph.LineOf(state, call.Thread)) with
        {
            Others =
            [
                .. Enumerable.Range(0, code.Threads.Length)
                    .Where(thread => thread != call.Thread && _graph.LineOf(state, thread) > 0)
                    .Select(thread => (code.Threads[thread].Name, _graph.LineOf(state, thread))),
            ],
        };
    }

    private ProgressReason ReturnReason(List<int> path, Invocation call)
    {
        var code = _graph.Machine.Code;
        return ReasonOf(ProgressReasonKind.ThrownBack, call, _graph.LineOf(path[^1], call.Thread)) with
        {
            Movers =
            [
                .. Enumerable.Range(0, code.Threads.Length).Where(thread => thread != call.Thread
                    && _graph.Machine.PointOf(_graph.StateOf(path[0]), thread)
                        != _graph.Machine.PointOf(_graph.StateOf(path[^1]), thread))
                    .Select(thread => code.Threads[thread].Name),
            ],
        };
    }
}
