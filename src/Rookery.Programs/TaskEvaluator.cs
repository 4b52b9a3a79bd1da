using System.Runtime.CompilerServices;
using Rookery.Notation;
using Rookery.Programs.Compiling;
using Rookery.Programs.Evaluation;

namespace Rookery.Programs;

/// <summary>Runs the tasks of a program, one action at a time, in whatever order a scheduler asks for.</summary>
/// <remarks>
/// <para>
/// Mutable, for one thread. Each live task is an <em>activation</em>: a small number that stands for its registers and
/// its place in its code. Numbers are used again after <see cref="Release"/>, so memory grows with the tasks that are
/// alive at one time and not with the size of the run.
/// </para>
/// <para>
/// Example: for <c>start count(0, 50)</c> with <c>work 50</c> in the leaf, <see cref="Start"/> gives activation 0, and
/// <see cref="Next"/> then <see cref="ActionKind.Work"/> with <see cref="Units"/> 50, then <see
/// cref="ActionKind.End"/>.
/// </para>
/// <para>
/// Sketch of the cost: 2 to 5 instructions an action at 1 to 3 ns each, no allocation once as many tasks have been
/// alive as will be; an activation takes 24 bytes and 8 for each register. bench/ measures it.
/// </para>
/// </remarks>
public sealed class TaskEvaluator
{
    private readonly CodeSet _set;
    private readonly EvaluationLimits _limits;
    private readonly Machine _machine;
    private readonly ActivationStore _store;
    private readonly long[] _startArguments;
    private long _actions;

    internal TaskEvaluator(CodeSet set, EvaluationLimits limits, IReadOnlyList<long> startArguments)
    {
        _set = set;
        _limits = limits;
        _machine = new Machine(set);
        _store = new ActivationStore(set.Codes, limits);
        _startArguments = [.. startArguments];
    }

    /// <summary>Units of time of the last action, at least 1, when it was work or block.</summary>
    public long Units { get; private set; }

    /// <summary>Line of the last action, from 1; the last line of a task at its end.</summary>
    public int Line { get; private set; }

    /// <summary>The activation that the last action made, when it was a fork or a call; it has not run yet.</summary>
    public int Child { get; private set; }

    /// <summary>Instructions executed so far.</summary>
    internal long Steps { get; private set; }

    /// <summary>Largest magnitude that a tracked value had since this was last set; for the analysis.</summary>
    internal ulong Magnitude
    {
        get => _machine.Magnitude;
        set => _machine.Magnitude = value;
    }

    /// <summary>Begins a run: makes the activation of the first task.</summary>
    public int Start()
    {
        int activation = _store.AcquireStart(_set.StartDefinition);
        _startArguments.CopyTo(_store.Registers(activation));
        return activation;
    }

    /// <summary>Which task an activation is: an index into <see cref="BoundProgram.Definitions"/>.</summary>
    public int DefinitionOf(int activation) => _store[activation].Definition;

    /// <summary>The arguments of an activation; valid until the next action of any.</summary>
    public ReadOnlySpan<long> ArgumentsOf(int activation) =>
        _store.Registers(activation)[.._set.Codes[_store[activation].Definition].ParameterCount];

    /// <summary>Gives an activation's memory back; its number may then mean another task.</summary>
    /// <exception cref="ArgumentException">It is not alive.</exception>
    public void Release(int activation) => _store.Release(activation);

    /// <summary>Runs a task up to its next action.</summary>
    /// <remarks>
    /// Work and waiting of no units are passed over. A task that may have unjoined children has a
    /// <see cref="ActionKind.Join"/> before its <see cref="ActionKind.End"/>. After its end, only its end again.
    /// </remarks>
    /// <exception cref="InputException">The program does something that has no meaning, or reaches a limit.</exception>
    public ActionKind Next(int activation)
    {
        int definition = _store[activation].Definition;
        var code = _set.Codes[definition];
        var registers = _store.Registers(activation);
        int at = _machine.Run(code, registers, _store[activation].Next, _limits.Steps);
        Steps = unchecked(Steps + _machine.Steps);
        if (++_actions > _limits.Actions)
        {
            string where = EvaluationErrors.In(code, registers[..code.ParameterCount]);
            EvaluationErrors.ActionsLimit(code.Spans[at], where, _limits.Actions);
        }

        ref readonly var action = ref code.Instructions[at];
        _store[activation].Next = at + 1;
        Line = action.C;
        switch (action.Op)
        {
            case Opcode.Work:
                Units = registers[action.A];
                return ActionKind.Work;
            case Opcode.Block:
                Units = registers[action.A];
                return ActionKind.Block;
            case Opcode.Fork:
                MakeChild(activation, code, at);
                return ActionKind.Fork;
            case Opcode.Call:
                MakeChild(activation, code, at);
                return ActionKind.Call;
            case Opcode.Join:
                return ActionKind.Join;
            default:
                _store[activation].Next = at;
                Units = action.Op == Opcode.Result ? registers[action.A] : 0;
                return ActionKind.End;
        }
    }

    /// <summary>The place in the text of an activation's last action.</summary>
    internal SourceSpan PlaceOf(int activation)
    {
        ref readonly var place = ref _store[activation];
        return _set.Codes[place.Definition].Spans[Math.Max(0, place.Next - 1)];
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void MakeChild(int parent, Code code, int at)
    {
        ref readonly var action = ref code.Instructions[at];
        int child = _store.AcquireChild(action.A, parent, at);
        var from = _store.Registers(parent);
        var to = _store.Registers(child);
        int count = _set.Codes[action.A].ParameterCount;
        var operands = code.Operands.AsSpan(action.B, count);
        for (int i = 0; i < operands.Length; i++)
            to[i] = from[operands[i]];
        Child = child;
    }
}
