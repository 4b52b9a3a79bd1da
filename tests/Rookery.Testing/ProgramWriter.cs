using System.Globalization;
using System.Text;
using Rookery.Notation.Randomness;

namespace Rookery.Testing;

/// <summary>Writes a random program: the same numbers give the same text.</summary>
/// <remarks>
/// Every task has the arguments <c>n</c>, which falls at each invocation and ends the recursion, and <c>lo</c> and
/// <c>hi</c>, a range that is often halved, as textbook programs do, and sometimes not.
/// </remarks>
/// <param name="seed">Which program.</param>
/// <param name="size">From 1; larger programs have more tasks and statements.</param>
/// <param name="options">What it may contain.</param>
internal sealed class ProgramWriter(ulong seed, int size, ProgramGenOptions options)
{
    private readonly StringBuilder _text = new();
    private readonly List<string> _locals = [];
    private Xoshiro256StarStar _random = Xoshiro256StarStar.FromSeed(seed);
    private int _taskCount;
    private int _named;
    private int _parallelDepth;

    public string Write()
    {
        _taskCount = 1 + Below(Math.Min(3, size));
        Line(0, $"param grain = {1 + Below(6)} in 1..1000");
        Line(0, $"const scale = {1 + Below(3)} + grain % 3");
        for (int task = 0; task < _taskCount; task++)
            WriteTask(task);
        Line(0, $"start t0({1 + Below(4)}, {Below(50) - 10}, {Below(60) + 20})");
        return _text.ToString();
    }

    private void WriteTask(int task)
    {
        _locals.Clear();
        _locals.AddRange(["n", "lo", "hi"]);
        Line(0, $"task t{task}(n, lo, hi)");
        if (Below(3) == 0)
        {
            WriteHalving(task);
            return;
        }

        Line(1, Below(2) == 0 ? "if n <= 0" : "if n <= 0 or hi - lo <= grain");
        WriteBlock(2, task, canInvoke: false, 1 + Below(2));
        Line(1, "else");
        WriteBlock(2, task, canInvoke: true, 1 + Below(2 + size));
    }

    /// <summary>
    /// The shape of textbook programs, whose cost depends on the length of a range only, or nearly so.
    /// </summary>
    private void WriteHalving(int task)
    {
        Line(1, "if hi - lo <= grain + scale or n < -3");
        Line(2, $"work {Amount()}");
        WriteBlock(2, task, canInvoke: false, Below(2));
        Line(1, "else");
        Line(2, Below(2) == 0 ? "let mid = lo + (hi - lo) / 2" : "let mid = (lo + hi) / 2");
        _locals.Add("mid");
        string next = Below(3) == 0 ? "n - 1" : "n";
        Line(2, $"fork t{task}({next}, lo, mid)");
        Line(2, $"{(Below(2) == 0 ? "fork" : "call")} t{task}({next}, mid, hi)");
        if (Below(3) > 0)
            Line(2, "join");
        Line(2, $"work {Amount()}");
        _locals.Remove("mid");
    }

    private void WriteBlock(int depth, int task, bool canInvoke, int count)
    {
        int visible = _locals.Count;
        Line(depth, $"work {Amount()}");
        for (int i = 0; i < count; i++)
            WriteStatement(depth, task, canInvoke);
        _locals.RemoveRange(visible, _locals.Count - visible);
    }

    private void WriteStatement(int depth, int task, bool canInvoke)
    {
        switch (Below(10))
        {
            case 0:
                WriteLet(depth);
                break;
            case 1 when options.WithBlock:
                Line(depth, $"block {Amount()}");
                break;
            case 2 when depth < 4:
                Line(depth, $"if {Condition()}");
                WriteBlock(depth + 1, task, canInvoke, Below(2));
                Line(depth, Below(2) == 0 ? "else" : $"else if {Condition()}");
                WriteBlock(depth + 1, task, canInvoke, Below(2));
                break;
            case 3 or 4 when depth < 4:
                WriteLoop(depth, task, canInvoke);
                break;
            case 5 or 6 or 7 when canInvoke:
                string word = Below(3) == 0 ? "call" : "fork";
                Line(depth, $"{word} t{task + Below(_taskCount - task)}(n - 1, {Range()})");
                break;
            case 8:
                Line(depth, "join");
                break;
            default:
                Line(depth, $"work {Amount()}");
                break;
        }
    }

    private void WriteLet(int depth)
    {
        // A name of this task may get a new value, but not inside a parallel loop around which it was made.
        bool isNew = _parallelDepth > 0 || _locals.Count == 3 || Below(3) > 0;
        string name = isNew
            ? string.Create(CultureInfo.InvariantCulture, $"v{_named++}")
            : _locals[3 + Below(_locals.Count - 3)];
        Line(depth, $"let {name} = {Expression(2)}");
        if (isNew)
            _locals.Add(name);
    }

    private void WriteLoop(int depth, int task, bool canInvoke)
    {
        string name = string.Create(CultureInfo.InvariantCulture, $"i{_named++}");
        bool isParallel = Below(2) == 0;
        string from = Below(2) == 0 ? "0" : "lo";
        string range = $"{from}..{from} + {Below(isParallel ? 7 : 4)}";
        string grain = isParallel && Below(2) == 0 ? " grain 1 + n % 3" : "";
        Line(depth, $"{(isParallel ? "fork " : "")}for {name} in {range}{grain}");
        _locals.Add(name);
        _parallelDepth += isParallel ? 1 : 0;
        WriteBlock(depth + 1, task, canInvoke, Below(2));
        _parallelDepth -= isParallel ? 1 : 0;
        _locals.Remove(name);
    }

    private string Range() => Below(5) switch
    {
        0 => "lo, lo + (hi - lo) / 2",
        1 => "lo + (hi - lo) / 2, hi",
        2 => "lo + 3, hi + 3",
        3 => $"{Below(9)}, {Below(30)}",
        _ => $"{Expression(1)} % 50, hi",
    };

    private string Amount() => Below(5) switch
    {
        0 => "max(0, hi - lo) % 11",
        1 when options.WithPick => $"pick(0, {options.UnitsMax}, {Local()}, {Local()})",
        2 => $"abs({Expression(2)}) % {1 + options.UnitsMax}",
        _ => Below((int)options.UnitsMax + 1).ToString(CultureInfo.InvariantCulture),
    };

    private string Condition() => Below(5) switch
    {
        0 => $"{Local()} < {Local()}",
        1 => $"hi - lo > {Below(9)}",
        2 => $"({Expression(1)}) % 2 == 0 and not n == {Below(3)}",
        3 when options.WithPick => $"pick(0, 1, {Local()}) == 0",
        _ => $"{Expression(1)} >= {Below(20)} or n > 2",
    };

    private string Expression(int depth) => depth == 0
        ? Atom()
        : Below(9) switch
        {
            0 => $"{Expression(depth - 1)} + {Expression(depth - 1)}",
            1 => $"{Expression(depth - 1)} - ({Expression(depth - 1)})",
            2 => $"({Expression(depth - 1)}) * {Below(4)}",
            3 => $"({Expression(depth - 1)}) / {1 + Below(4)}",
            4 => $"min({Expression(depth - 1)}, {Expression(depth - 1)})",
            5 => $"if {Local()} < {Local()} then {Expression(depth - 1)} else {Atom()}",
            6 => $"({Expression(depth - 1)}) % {2 + Below(5)}",
            7 => $"({Expression(depth - 1)}) & 15",
            _ => Atom(),
        };

    private string Atom() => Below(3) switch
    {
        0 => Below(10).ToString(CultureInfo.InvariantCulture),
        1 => Below(2) == 0 ? "scale" : "grain",
        _ => Local(),
    };

    private string Local() => _locals[Below(_locals.Count)];

    private int Below(int bound) => (int)_random.NextBelow((ulong)bound);

    private void Line(int depth, string text) => _text.Append(' ', 4 * depth).Append(text).Append('\n');
}
