using Rookery.Notation;

namespace Rookery.Checking.Compiling;

/// <summary>Collects the instructions of one thread.</summary>
/// <remarks>Mutable. Labels are placed later than they are used; <see cref="Resolve"/> puts them in.</remarks>
internal sealed class CodeBuilder
{
    private readonly List<Instruction> _code = [];
    private readonly List<int> _labels = [];
    private readonly Dictionary<long, int> _constants = [];
    private int _scratch;

    public List<Access> Accesses { get; } = [];

    public List<ResultOperand> Operands { get; } = [];

    public int LocalCount { get; private set; }

    /// <summary>Scratch registers in use, to go back to.</summary>
    public int Mark => _scratch;

    public void FreeDownTo(int mark) => _scratch = mark;

    public int NewScratch(SourceSpan span)
    {
        if (Registers.Scratch + _scratch >= Registers.Count)
            throw new InputException(BindErrors.TooLarge(span, "this expression"));
        return Registers.Scratch + _scratch++;
    }

    public int Constant(long value, SourceSpan span)
    {
        if (_constants.TryGetValue(value, out int at))
            return Registers.Constants + at;
        if (_constants.Count == Registers.ConstantsMax)
            throw new InputException(BindErrors.TooLarge(span, "this scenario"));
        _constants.Add(value, _constants.Count);
        return Registers.Constants + _constants.Count - 1;
    }

    public void NoteLocals(int count) => LocalCount = Math.Max(LocalCount, count);

    /// <summary>How many instructions there are.</summary>
    public int InstructionCount => _code.Count;

    /// <summary>How many points there are.</summary>
    public int PointCount { get; private set; }

    public int NewPoint() => PointCount++;

    public int NewLabel()
    {
        _labels.Add(-1);
        return _labels.Count - 1;
    }

    public void Place(int label) => _labels[label] = _code.Count;

    public void Emit(Opcode op, int a, int b, int c, SourceSpan span)
    {
        if (_code.Count == AlgorithmLimits.InstructionsMax)
            throw new InputException(BindErrors.TooLarge(span, "this scenario"));
        _code.Add(new(op, a, b, c, span.Line));
    }

    public Instruction[] Resolve()
    {
        for (int at = 0; at < _code.Count; at++)
        {
            if (_code[at].Op is Opcode.Jump or Opcode.JumpZero or Opcode.JumpNotZero)
                _code[at] = _code[at] with { A = _labels[_code[at].A] };
        }

        return [.. _code];
    }

    public long[] InitialRegisters()
    {
        var registers = new long[Registers.Count];
        foreach (var (value, at) in _constants)
            registers[Registers.Constants + at] = value;
        return registers;
    }
}
