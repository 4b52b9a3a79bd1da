using Rookery.Programs.Compiling;

namespace Rookery.Programs.Evaluation;

/// <summary>Executes a task's instructions up to the next action.</summary>
/// <remarks>
/// Mutable, for one thread. The loop is plain rather than short: it is the inner loop of every simulation (bench/).
/// Arithmetic is unchecked with explicit tests, since an error must name its place.
/// </remarks>
internal sealed class Machine(CodeSet set)
{
    private readonly Arithmetic _arithmetic = new(set);

    /// <summary>Instructions that the last <see cref="Run"/> executed.</summary>
    public long Steps { get; private set; }

    /// <summary>Largest magnitude seen by <see cref="Opcode.Track"/> since it was set.</summary>
    public ulong Magnitude { get; set; }

    /// <summary>Executes from an instruction on.</summary>
    /// <returns>Index of the instruction that is an action; its operands are evaluated.</returns>
    public int Run(Code code, Span<long> r, int next, long stepsMax)
    {
        unchecked
        {
            var instructions = code.Instructions;
            long steps = 0;
            while (true)
            {
                ref readonly var i = ref instructions[next];
                steps++;
                switch (i.Op)
                {
                    case Opcode.Move:
                        r[i.A] = r[i.B];
                        break;
                    case Opcode.Add:
                        {
                            long left = r[i.B], right = r[i.C], sum = left + right;
                            if (((left ^ sum) & (right ^ sum)) < 0)
                                Arithmetic.Overflow(code, r, next, "+");
                            r[i.A] = sum;
                            break;
                        }

                    case Opcode.Subtract:
                        {
                            long left = r[i.B], right = r[i.C], difference = left - right;
                            if (((left ^ right) & (left ^ difference)) < 0)
                                Arithmetic.Overflow(code, r, next, "-");
                            r[i.A] = difference;
                            break;
                        }

                    case Opcode.Increment:
                        r[i.A]++;
                        break;
                    case >= Opcode.Jump and <= Opcode.JumpLessEqual:
                        if (!IsTaken(i, r))
                            break;
                        if (steps > stepsMax)
                            EvaluationErrors.StepsLimit(code.Spans[next], Where(code, r), stepsMax);
                        next = i.A;
                        continue;
                    case Opcode.Split:
                        if (!Split(code, r, i))
                            break;
                        next = i.A;
                        continue;
                    case Opcode.Track:
                        Magnitude = Math.Max(Magnitude, (ulong)Math.Max(r[i.A], ~r[i.A]));
                        break;
                    case Opcode.Work or Opcode.Block:
                        if (r[i.A] == 0)
                            break;
                        if (r[i.A] < 0)
                            Negative(code, r, next);
                        Steps = steps;
                        return next;
                    case >= Opcode.Fork and <= Opcode.Result:
                        Steps = steps;
                        return next;
                    default:
                        _arithmetic.Execute(code, r, next);
                        break;
                }

                next++;
            }
        }
    }

    private static bool IsTaken(in Instruction i, Span<long> r) => i.Op switch
    {
        Opcode.JumpZero => r[i.B] == 0,
        Opcode.JumpNotZero => r[i.B] != 0,
        Opcode.JumpEqual => r[i.B] == r[i.C],
        Opcode.JumpNotEqual => r[i.B] != r[i.C],
        Opcode.JumpLess => r[i.B] < r[i.C],
        Opcode.JumpLessEqual => r[i.B] <= r[i.C],
        _ => true,
    };

    /// <summary>Halves a range; true when it is at most the grain and stays whole.</summary>
    private static bool Split(Code code, Span<long> r, in Instruction i)
    {
        unchecked
        {
            var operands = code.Operands.AsSpan(i.B, 3);
            long from = r[operands[0]], to = r[operands[1]], grain = Math.Max(1, r[operands[2]]);

            // As unsigned numbers: the length of a range may exceed what a signed number holds.
            ulong length = (ulong)to - (ulong)from;
            if (length <= (ulong)grain)
                return true;
            r[i.C] = (long)((ulong)from + (length / 2));
            return false;
        }
    }

    private static void Negative(Code code, Span<long> r, int at)
    {
        ref readonly var i = ref code.Instructions[at];
        EvaluationErrors.NegativeUnits(
            code.Spans[at], Where(code, r), i.Op == Opcode.Work ? "work" : "block", r[i.A]);
    }

    private static string Where(Code code, Span<long> r) => EvaluationErrors.In(code, r[..code.ParameterCount]);
}
