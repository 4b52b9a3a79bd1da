using System.Numerics;
using Rookery.Programs.Compiling;

namespace Rookery.Programs.Evaluation;

/// <summary>The less frequent instructions, and what is said when one has no result.</summary>
internal sealed class Arithmetic(CodeSet set)
{
    /// <summary>Executes one instruction that neither jumps nor acts.</summary>
    public void Execute(Code code, Span<long> r, int at)
    {
        ref readonly var i = ref code.Instructions[at];
        r[i.A] = i.Op switch
        {
            Opcode.Multiply => Multiply(code, r, at),
            Opcode.Divide => Divide(code, r, at),
            Opcode.Remainder => Remainder(code, r, at),
            Opcode.Negate => Negate(code, r, at),
            Opcode.Not => r[i.B] == 0 ? 1 : 0,
            Opcode.Truth => r[i.B] == 0 ? 0 : 1,
            Opcode.BitAnd => r[i.B] & r[i.C],
            Opcode.BitOr => r[i.B] | r[i.C],
            Opcode.BitXor => r[i.B] ^ r[i.C],
            Opcode.ShiftLeft => ShiftLeft(code, r, at),
            Opcode.ShiftRight => r[i.B] >> ShiftCount(code, r, at),
            Opcode.Equal => r[i.B] == r[i.C] ? 1 : 0,
            Opcode.NotEqual => r[i.B] != r[i.C] ? 1 : 0,
            Opcode.Less => r[i.B] < r[i.C] ? 1 : 0,
            Opcode.LessEqual => r[i.B] <= r[i.C] ? 1 : 0,
            Opcode.Min => Math.Min(r[i.B], r[i.C]),
            Opcode.Max => Math.Max(r[i.B], r[i.C]),
            Opcode.Abs => Abs(code, r, at),
            Opcode.Log2 => Log2(code, r, at),
            Opcode.Sqrt => Sqrt(code, r, at),
            Opcode.Sum => Sum(code, r, at),
            Opcode.Element => Element(code, r, at),
            Opcode.Pick => Pick(code, r, at),
            _ => throw new InvalidOperationException("Not an instruction that computes."),
        };
    }

    /// <summary>Says that the two operands have no result in 64 bits.</summary>
    public static void Overflow(Code code, Span<long> r, int at, string sign)
    {
        ref readonly var i = ref code.Instructions[at];
        EvaluationErrors.Overflow(code.Spans[at], Where(code, r), r[i.B], sign, r[i.C]);
    }

    private static long Multiply(Code code, Span<long> r, int at)
    {
        ref readonly var i = ref code.Instructions[at];
        long high = Math.BigMul(r[i.B], r[i.C], out long low);
        if (high != low >> 63)
            Overflow(code, r, at, "*");
        return low;
    }

    private static long Divide(Code code, Span<long> r, int at)
    {
        ref readonly var i = ref code.Instructions[at];
        long left = r[i.B], right = r[i.C];
        if (right == 0)
            EvaluationErrors.DivisionByZero(code.Spans[at], Where(code, r), left, "/");
        if (right == -1)
        {
            if (left == long.MinValue)
                Overflow(code, r, at, "/");
            return -left;
        }

        long quotient = left / right;
        return left % right != 0 && (left < 0) != (right < 0) ? quotient - 1 : quotient;
    }

    private static long Remainder(Code code, Span<long> r, int at)
    {
        ref readonly var i = ref code.Instructions[at];
        long left = r[i.B], right = r[i.C];
        if (right == 0)
            EvaluationErrors.DivisionByZero(code.Spans[at], Where(code, r), left, "%");
        if (right == -1)
            return 0;
        long rest = left % right;
        return rest != 0 && (rest < 0) != (right < 0) ? rest + right : rest;
    }

    private static long Negate(Code code, Span<long> r, int at)
    {
        long value = r[code.Instructions[at].B];
        if (value == long.MinValue)
            EvaluationErrors.Overflow(code.Spans[at], Where(code, r), "-", value);
        return -value;
    }

    private static long Abs(Code code, Span<long> r, int at)
    {
        long value = r[code.Instructions[at].B];
        if (value == long.MinValue)
            EvaluationErrors.Overflow(code.Spans[at], Where(code, r), "abs", value);
        return Math.Abs(value);
    }

    private static long ShiftLeft(Code code, Span<long> r, int at)
    {
        ref readonly var i = ref code.Instructions[at];
        int count = ShiftCount(code, r, at);
        long shifted = r[i.B] << count;
        if (shifted >> count != r[i.B])
            Overflow(code, r, at, "<<");
        return shifted;
    }

    private static int ShiftCount(Code code, Span<long> r, int at)
    {
        long count = r[code.Instructions[at].C];
        if (count is < 0 or > 63)
            EvaluationErrors.ShiftOutOfRange(code.Spans[at], Where(code, r), count);
        return (int)count;
    }

    private static long Log2(Code code, Span<long> r, int at)
    {
        long value = r[code.Instructions[at].B];
        if (value <= 0)
            EvaluationErrors.Domain(code.Spans[at], Where(code, r), "log2", value, "1");
        return BitOperations.Log2((ulong)value);
    }

    private static long Sqrt(Code code, Span<long> r, int at)
    {
        long value = r[code.Instructions[at].B];
        if (value < 0)
            EvaluationErrors.Domain(code.Spans[at], Where(code, r), "sqrt", value, "0");

        // The nearest root in floating point is at most one off; squares are compared in 128 bits.
        long root = (long)Math.Sqrt(value);
        while ((Int128)root * root > value)
            root--;
        while ((Int128)(root + 1) * (root + 1) <= value)
            root++;
        return root;
    }

    private long Sum(Code code, Span<long> r, int at)
    {
        ref readonly var i = ref code.Instructions[at];
        var column = set.Columns[i.B];
        long from = r[code.Operands[i.C]], to = r[code.Operands[i.C + 1]];
        if (from < 0 || to < from || to > column.Count)
            EvaluationErrors.SumBounds(code.Spans[at], Where(code, r), from, to, column.Count);
        if (!column.TrySum(from, to, out long sum))
            EvaluationErrors.SumOverflow(code.Spans[at], Where(code, r));
        return sum;
    }

    private long Element(Code code, Span<long> r, int at)
    {
        ref readonly var i = ref code.Instructions[at];
        var column = set.Columns[i.B];
        if (r[i.C] < 0 || r[i.C] >= column.Count)
            EvaluationErrors.Index(code.Spans[at], Where(code, r), r[i.C], column.Count);
        return column[r[i.C]];
    }

    private long Pick(Code code, Span<long> r, int at)
    {
        ref readonly var i = ref code.Instructions[at];
        var operands = code.Operands.AsSpan(i.B, i.C);
        long lower = r[operands[0]], upper = r[operands[1]];
        if (lower > upper)
            EvaluationErrors.PickRange(code.Spans[at], Where(code, r), lower, upper);
        var pick = new PickHash(set.Seed);
        foreach (int key in operands[2..])
            pick.Add(r[key]);
        return pick.Draw(lower, upper);
    }

    private static string Where(Code code, Span<long> r) => EvaluationErrors.In(code, r[..code.ParameterCount]);
}
