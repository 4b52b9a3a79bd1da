namespace Rookery.Programs.Compiling;

/// <summary>One step of a task's code.</summary>
/// <param name="Op">What to do.</param>
/// <param name="A">First operand, see <see cref="Opcode"/>.</param>
/// <param name="B">Second operand.</param>
/// <param name="C">Third operand.</param>
internal readonly record struct Instruction(Opcode Op, int A, int B, int C)
{
    /// <summary>Whether it computes a value.</summary>
    public bool HasResult => Op is < Opcode.Jump;

    /// <summary>The value that it computes.</summary>
    public int ResultValue => Op == Opcode.Split ? C : A;

    /// <summary>The same with its values and its jump label replaced.</summary>
    public Instruction Map(Func<int, int> value, Func<int, int> label) => Op switch
    {
        Opcode.Sum => this with { A = value(A) },
        Opcode.Element => this with { A = value(A), C = value(C) },
        Opcode.Pick => this with { A = value(A) },
        Opcode.Split => this with { A = label(A), C = value(C) },
        Opcode.Increment or Opcode.Track or Opcode.Result => this with { A = value(A) },
        Opcode.Jump => this with { A = label(A) },
        Opcode.JumpZero or Opcode.JumpNotZero => this with { A = label(A), B = value(B) },
        >= Opcode.JumpEqual and <= Opcode.JumpLessEqual => new(Op, label(A), value(B), value(C)),
        Opcode.Work or Opcode.Block => this with { A = value(A) },
        >= Opcode.Fork and <= Opcode.End => this,
        Opcode.Move or Opcode.Negate or Opcode.Not or Opcode.Truth or Opcode.Abs or Opcode.Log2 or Opcode.Sqrt =>
            this with { A = value(A), B = value(B) },
        _ => new(Op, value(A), value(B), value(C)),
    };
}
