namespace Rookery.Checking.Compiling;

/// <summary>Finds with which points an operation can begin, and which it can come to later.</summary>
internal sealed class StepPoints
{
    private readonly Instruction[] _code;
    private readonly bool[] _isFirst;
    private readonly bool[] _isLater;

    public StepPoints(Instruction[] code, int pointCount, IEnumerable<int> entries)
    {
        (_code, _isFirst, _isLater) = (code, new bool[pointCount], new bool[pointCount]);
        foreach (int entry in entries)
            Reach(entry, _isFirst);
        for (int at = 0; at < code.Length; at++)
        {
            if (code[at].Op == Opcode.Point)
                Reach(at + 1, _isLater);
        }
    }

    /// <summary>Whether an operation can begin with this point.</summary>
    public bool IsFirst(int point) => _isFirst[point];

    /// <summary>Whether the operation may already have made a step when it comes here.</summary>
    public bool IsLater(int point) => _isLater[point];

    /// <summary>Marks the points that are reached next, within one operation.</summary>
    private void Reach(int from, bool[] reached)
    {
        var seen = new bool[_code.Length];
        var open = new Stack<int>([from]);
        Span<int> next = stackalloc int[2];
        while (open.Count > 0)
        {
            int at = open.Pop();
            if (seen[at])
                continue;
            seen[at] = true;
            if (_code[at].Op == Opcode.Point)
                reached[_code[at].A] = true;
            if (_code[at].Op is Opcode.Point or Opcode.Return)
                continue;
            int count = Flow.Successors(_code, at, next);
            for (int one = 0; one < count; one++)
                open.Push(next[one]);
        }
    }
}
