namespace Rookery.Checking.Compiling;

/// <summary>Which instruction can follow which, and what each reads and gives.</summary>
internal static class Flow
{
    /// <summary>Writes the instructions that can follow one; returns how many there are, at most two.</summary>
    public static int Successors(Instruction[] code, int at, Span<int> next)
    {
        switch (code[at].Op)
        {
            case Opcode.End:
                return 0;
            case Opcode.Jump:
                next[0] = code[at].A;
                return 1;
            case Opcode.JumpZero or Opcode.JumpNotZero:
                next[0] = code[at].A;
                next[1] = at + 1;
                return 2;
            default:
                next[0] = at + 1;
                return 1;
        }
    }

    /// <summary>
    /// For each instruction the operation's own names that may be read before they are written again.
    /// </summary>
    /// <remarks>The usual backward data flow, repeated until nothing changes. A return ends the life of all.</remarks>
    public static uint[] Live(Instruction[] code, List<Access> accesses, List<ResultOperand> operands)
    {
        var live = new uint[code.Length];
        Span<int> next = stackalloc int[2];
        bool isChanged = true;
        while (isChanged)
        {
            isChanged = false;
            for (int at = code.Length - 1; at >= 0; at--)
            {
                uint after = 0;
                int count = Successors(code, at, next);
                for (int one = 0; one < count; one++)
                    after |= live[next[one]];
                uint before = Before(code[at], accesses, operands, after);
                isChanged |= before != live[at];
                live[at] = before;
            }
        }

        return live;
    }

    private static uint Before(Instruction one, List<Access> accesses, List<ResultOperand> operands, uint after)
    {
        switch (one.Op)
        {
            case Opcode.Point or Opcode.Jump or Opcode.End:
                return after;
            case Opcode.Access:
                var access = accesses[one.A];
                return (after & ~Bit(access.Result)) | Bit(access.Index) | Bit(access.First) | Bit(access.Second);
            case Opcode.Return:
                uint read = 0;
                for (int at = one.A; at < one.A + one.B; at++)
                    read |= Bit(operands[at].Register);
                return read;
            case Opcode.Assert:
                return after | Bit(one.A);
            case Opcode.JumpZero or Opcode.JumpNotZero:
                return after | Bit(one.B);
            case Opcode.Move or Opcode.Negate or Opcode.Not or Opcode.Truth or Opcode.Abs:
                return (after & ~Bit(one.A)) | Bit(one.B);
            default:
                return (after & ~Bit(one.A)) | Bit(one.B) | Bit(one.C);
        }
    }

    private static uint Bit(int register) => register is >= 0 and < AlgorithmLimits.LocalsMax ? 1u << register : 0;
}
