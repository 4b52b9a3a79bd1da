using Rookery.Notation;

namespace Rookery.Programs.Compiling;

/// <summary>Collects the instructions of one task.</summary>
/// <remarks>
/// <para>
/// Mutable. Instructions name <em>values</em>: an argument, a local, an intermediate result, a constant; an
/// intermediate result is never named again for something else, so that an analysis of values can read the code.
/// Each value but a constant is assigned a register when it is made; registers are used again like a stack. Building
/// replaces values by registers.
/// </para>
/// </remarks>
internal sealed class CodeBuilder
{
    private readonly List<int> _registerOf = [];
    private readonly Dictionary<long, int> _constants = [];
    private readonly List<(int Value, long Constant)> _constantList = [];
    private readonly List<Instruction> _instructions = [];
    private readonly List<SourceSpan> _spans = [];
    private readonly List<int> _operands = [];
    private readonly List<int> _labels = [];
    private int _top;
    private int _registerMax;

    public CodeBuilder(TaskDefinition definition)
    {
        Definition = definition;
        foreach (string _ in definition.ParameterNames)
            NewValue();
    }

    public TaskDefinition Definition { get; }

    /// <summary>The instructions so far, naming values; jumps name labels.</summary>
    public IReadOnlyList<Instruction> Instructions => _instructions;

    /// <summary>The operand table so far, naming values.</summary>
    public IReadOnlyList<int> Operands => _operands;

    /// <summary>The place that errors of each instruction point at.</summary>
    public IReadOnlyList<SourceSpan> Spans => _spans;

    /// <summary>Number of values made so far.</summary>
    public int ValueCount => _registerOf.Count;

    /// <summary>The constants among the values.</summary>
    public IReadOnlyList<(int Value, long Constant)> Constants => _constantList;

    /// <summary>How many registers hold something; to be given to <see cref="FreeDownTo"/>.</summary>
    public int Mark => _top;

    /// <summary>Frees the registers of all values made since a mark.</summary>
    public void FreeDownTo(int mark) => _top = mark;

    /// <summary>A new value with a register of its own.</summary>
    public int NewValue()
    {
        int value = NewValueIn(_top++);
        _registerMax = Math.Max(_registerMax, _top);
        return value;
    }

    /// <summary>A new value that takes over the register of another one.</summary>
    public int NewValueLike(int value) => NewValueIn(_registerOf[value]);

    /// <summary>The value that is always <paramref name="constant"/>.</summary>
    public int Constant(long constant)
    {
        if (_constants.TryGetValue(constant, out int value))
            return value;
        value = NewValueIn(-1 - _constantList.Count);
        _constants.Add(constant, value);
        _constantList.Add((value, constant));
        return value;
    }

    public int NewLabel()
    {
        _labels.Add(-1);
        return _labels.Count - 1;
    }

    /// <summary>Lets a label stand for the next instruction.</summary>
    public void Place(int label) => _labels[label] = _instructions.Count;

    public void Emit(Opcode op, int a, int b, int c, SourceSpan span)
    {
        _instructions.Add(new(op, a, b, c));
        _spans.Add(span);
    }

    /// <summary>Adds values to the operand table.</summary>
    /// <returns>Their place.</returns>
    public int AddOperands(IEnumerable<int> values)
    {
        int place = _operands.Count;
        _operands.AddRange(values);
        return place;
    }

    /// <summary>The finished code.</summary>
    /// <param name="isTracked">
    /// For each instruction whether the analysis wants to know how large its result is; null for none.
    /// </param>
    public Code Build(bool[]? isTracked = null)
    {
        int trackedCount = isTracked?.Count(tracked => tracked) ?? 0;
        var instructions = new List<Instruction>(_instructions.Count + trackedCount);
        var spans = new List<SourceSpan>(instructions.Capacity);
        var placeOf = new int[_instructions.Count];
        for (int i = 0; i < _instructions.Count; i++)
        {
            placeOf[i] = instructions.Count;
            instructions.Add(_instructions[i]);
            spans.Add(_spans[i]);
            if (isTracked is not null && isTracked[i])
            {
                instructions.Add(new(Opcode.Track, _instructions[i].ResultValue, 0, 0));
                spans.Add(_spans[i]);
            }
        }

        var final = instructions.Select(i => i.Map(Register, label => placeOf[_labels[label]])).ToArray();
        return new(
            Definition, final, [.. spans], [.. _operands.Select(Register)],
            [.. _constantList.Select(c => c.Constant)], _registerMax + _constantList.Count);
    }

    private int NewValueIn(int register)
    {
        _registerOf.Add(register);
        return _registerOf.Count - 1;
    }

    private int Register(int value)
    {
        int register = _registerOf[value];
        return register >= 0 ? register : _registerMax - 1 - register;
    }
}
