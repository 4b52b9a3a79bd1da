using Rookery.Checking.Compiling;

namespace Rookery.Checking.Exploring;

/// <summary>Executes what a thread does between two shared accesses.</summary>
internal static class Interpreter
{
    /// <summary>Goes on until something happens that is not the thread's alone.</summary>
    /// <param name="code">The instructions.</param>
    /// <param name="r">The registers.</param>
    /// <param name="at">The instruction to go on with; afterwards the one that stopped it.</param>
    /// <param name="fuel">Instructions that may still be executed.</param>
    /// <param name="fault">What went wrong, with <see cref="Halt.Fault"/>.</param>
    public static Halt Run(Instruction[] code, long[] r, ref int at, ref int fuel, out Fault fault)
    {
        fault = default;
        while (true)
        {
            ref readonly Instruction i = ref code[at];
            if (unchecked(--fuel) < 0)
            {
                fault = new(FaultKind.EndlessLoop, i.Line);
                return Halt.Fault;
            }

            switch (i.Op)
            {
                case Opcode.Point:
                    return Halt.Point;
                case Opcode.Access:
                    return Halt.Access;
                case Opcode.Return:
                    return Halt.Return;
                case Opcode.End:
                    return Halt.End;
                case Opcode.Jump:
                    at = i.A;
                    continue;
                case Opcode.JumpZero:
                    at = r[i.B] == 0 ? i.A : at + 1;
                    continue;
                case Opcode.JumpNotZero:
                    at = r[i.B] != 0 ? i.A : at + 1;
                    continue;
                case Opcode.Move:
                    r[i.A] = r[i.B];
                    break;
                case Opcode.Negate:
                    r[i.A] = -r[i.B];
                    break;
                case Opcode.Not:
                    r[i.A] = r[i.B] == 0 ? 1 : 0;
                    break;
                case Opcode.Truth:
                    r[i.A] = r[i.B] == 0 ? 0 : 1;
                    break;
                case Opcode.Abs:
                    r[i.A] = Math.Abs(r[i.B]);
                    break;
                case Opcode.Assert when r[i.A] == 0:
                    fault = new(FaultKind.Assertion, i.Line);
                    return Halt.Fault;
                case Opcode.Assert:
                    break;
                default:
                    FaultKind kind = Arithmetic.Apply(i.Op, r[i.B], r[i.C], out long result);
                    if (kind != FaultKind.None)
                    {
                        fault = new(kind, i.Line);
                        return Halt.Fault;
                    }

                    r[i.A] = result;
                    break;
            }

            at++;
        }
    }
}
