using Rookery.Programs.Compiling;

namespace Rookery.Programs.Analyses;

/// <summary>How every value of a task moves when its arguments are shifted, and which shifts that allows.</summary>
/// <remarks>
/// <para>
/// Reads the code once, in order. Each value has a <em>form</em>: how much it changes for a change of each argument. An
/// argument has a 1 for itself; sums add forms; a division by a constant divides them. Whatever else looks at a value
/// (a comparison of two that move differently, a product, data, an amount of work) is an equation: the form must be 0.
/// What a name holds at different times must have one form, so the order of execution does not matter.
/// </para>
/// <para>Mutable, for one task.</para>
/// </remarks>
internal sealed class ShiftForms
{
    private readonly CodeBuilder _code;
    private readonly int _arguments;
    private readonly Fraction[] _zero;
    private readonly Fraction[]?[] _forms;
    private readonly Dictionary<int, long> _constants;

    private ShiftForms(CodeBuilder code)
    {
        _code = code;
        _arguments = code.Definition.ParameterNames.Length;
        _zero = new Fraction[_arguments];
        _forms = new Fraction[]?[code.ValueCount];
        _constants = code.Constants.ToDictionary(c => c.Value, c => c.Constant);
        Equations = new(_arguments);
        for (int i = 0; i < _arguments; i++)
        {
            var form = new Fraction[_arguments];
            form[i] = Fraction.One;
            _forms[i] = form;
        }

        foreach (int constant in _constants.Keys)
            _forms[constant] = _zero;
    }

    /// <summary>Forms that must be 0.</summary>
    public LinearSystem Equations { get; }

    /// <summary>Forms that must be whole numbers for every shift.</summary>
    public List<Fraction[]> Whole { get; } = [];

    /// <summary>For each fork and call: how the child's own shifts move with the task's, one form for each.</summary>
    public List<Fraction[][]> ChildShifts { get; } = [];

    /// <summary>The forms of all values.</summary>
    public IReadOnlyList<Fraction[]?> Forms => _forms;

    /// <summary>Reads the code of a task.</summary>
    /// <param name="code">The code.</param>
    /// <param name="known">What shifts the tasks that it forks and calls allow.</param>
    public static ShiftForms Of(CodeBuilder code, Translations[] known)
    {
        var forms = new ShiftForms(code);
        foreach (var instruction in code.Instructions)
        {
            if (instruction.HasResult)
                forms.Compute(instruction);
            else
                forms.Look(instruction, known);
        }

        return forms;
    }

    private void Compute(in Instruction i)
    {
        switch (i.Op)
        {
            case Opcode.Move:
                Set(i.A, Form(i.B));
                break;
            case Opcode.Add:
                Set(i.A, Combine(Form(i.B), Form(i.C), Fraction.One));
                break;
            case Opcode.Subtract:
                Set(i.A, Combine(Form(i.B), Form(i.C), Fraction.Of(-1)));
                break;
            case Opcode.Negate:
                Set(i.A, Combine(_zero, Form(i.B), Fraction.Of(-1)));
                break;
            case Opcode.Multiply:
                Multiply(i);
                break;
            case Opcode.Divide or Opcode.Remainder:
                Divide(i);
                break;
            case Opcode.Min or Opcode.Max:
                RequireEqual(i.B, i.C);
                Set(i.A, Form(i.B));
                break;
            case Opcode.Equal or Opcode.NotEqual or Opcode.Less or Opcode.LessEqual:
                RequireEqual(i.B, i.C);
                Set(i.A, _zero);
                break;
            case Opcode.Split:
                RequireEqual(_code.Operands[i.B], _code.Operands[i.B + 1]);
                RequireZero(_code.Operands[i.B + 2]);
                Set(i.C, Form(_code.Operands[i.B]));
                break;
            case Opcode.Increment:
                break;
            default:
                RequireZeroOperands(i);
                Set(i.A, _zero);
                break;
        }
    }

    private void Look(in Instruction i, Translations[] known)
    {
        switch (i.Op)
        {
            case Opcode.JumpZero or Opcode.JumpNotZero:
                RequireZero(i.B);
                break;
            case >= Opcode.JumpEqual and <= Opcode.JumpLessEqual:
                RequireEqual(i.B, i.C);
                break;
            case Opcode.Work or Opcode.Block:
                RequireZero(i.A);
                break;
            case Opcode.Fork or Opcode.Call:
                LookAtChild(i, known[i.A]);
                break;
            default:
                break;
        }
    }

    /// <summary>The child's arguments may move only as the child itself allows.</summary>
    private void LookAtChild(in Instruction i, Translations child)
    {
        int place = i.B;
        for (int argument = 0; argument < child.Arguments; argument++)
        {
            var rest = Form(_code.Operands[place + argument]);
            for (int k = 0; k < child.Count; k++)
            {
                var shift = Form(_code.Operands[place + child.Pivots[k]]);
                rest = Combine(rest, shift, child.Vectors[k][argument] * Fraction.Of(-1));
            }

            Equations.Add(rest);
        }

        ChildShifts.Add([.. child.Pivots.Select(pivot => Form(_code.Operands[place + pivot]))]);
    }

    private void Multiply(in Instruction i)
    {
        if (_constants.TryGetValue(i.B, out long left))
        {
            Set(i.A, Combine(_zero, Form(i.C), Fraction.Of(left)));
        }
        else if (_constants.TryGetValue(i.C, out long right))
        {
            Set(i.A, Combine(_zero, Form(i.B), Fraction.Of(right)));
        }
        else
        {
            RequireZeroOperands(i);
            Set(i.A, _zero);
        }
    }

    /// <summary>(x + m k) / k is x / k + m, and (x + m k) % k is x % k, for whole m.</summary>
    private void Divide(in Instruction i)
    {
        if (!_constants.TryGetValue(i.C, out long divisor) || divisor == 0)
        {
            RequireZeroOperands(i);
            Set(i.A, _zero);
            return;
        }

        var quotient = Combine(_zero, Form(i.B), Fraction.One / Fraction.Of(divisor));
        Whole.Add(quotient);
        Set(i.A, i.Op == Opcode.Divide ? quotient : _zero);
    }

    private void RequireZeroOperands(in Instruction i)
    {
        switch (i.Op)
        {
            case Opcode.Sum:
                RequireZero(_code.Operands[i.C]);
                RequireZero(_code.Operands[i.C + 1]);
                break;
            case Opcode.Pick:
                for (int k = 0; k < i.C; k++)
                    RequireZero(_code.Operands[i.B + k]);
                break;
            case Opcode.Element:
                RequireZero(i.C);
                break;
            case Opcode.Not or Opcode.Truth or Opcode.Abs or Opcode.Log2 or Opcode.Sqrt:
                RequireZero(i.B);
                break;
            default:
                RequireZero(i.B);
                RequireZero(i.C);
                break;
        }
    }

    private void RequireEqual(int left, int right) =>
        Equations.Add(Combine(Form(left), Form(right), Fraction.Of(-1)));

    private void RequireZero(int value) => Equations.Add(Form(value));

    private void Set(int value, Fraction[] form)
    {
        if (_forms[value] is { } earlier)
            Equations.Add(Combine(earlier, form, Fraction.Of(-1)));
        else
            _forms[value] = form;
    }

    private Fraction[] Form(int value) =>
        _forms[value] ?? throw new InvalidOperationException("A value is used before it is computed.");

    private Fraction[] Combine(Fraction[] a, Fraction[] b, Fraction factor)
    {
        var sum = new Fraction[_arguments];
        for (int k = 0; k < _arguments; k++)
            sum[k] = a[k] + (b[k] * factor);
        return sum;
    }
}
