using System.Runtime.CompilerServices;

namespace Rookery.Checking.Compiling;

/// <summary>What operators do with values of at most 31 bits and a sign.</summary>
internal static class Arithmetic
{
    /// <summary>Applies an operator of two operands.</summary>
    /// <remarks>Operands are checked values, so that no result leaves 64 bits.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FaultKind Apply(Opcode op, long left, long right, out long result)
    {
        unchecked
        {
            switch (op)
            {
                case Opcode.Add:
                    result = left + right;
                    break;
                case Opcode.Subtract:
                    result = left - right;
                    break;
                case Opcode.Equal:
                    result = left == right ? 1 : 0;
                    return FaultKind.None;
                case Opcode.NotEqual:
                    result = left != right ? 1 : 0;
                    return FaultKind.None;
                case Opcode.Less:
                    result = left < right ? 1 : 0;
                    return FaultKind.None;
                case Opcode.LessEqual:
                    result = left <= right ? 1 : 0;
                    return FaultKind.None;
                default:
                    return ApplyRare(op, left, right, out result);
            }

            return Math.Abs(result) > AlgorithmLimits.ValueMax ? FaultKind.ValueTooLarge : FaultKind.None;
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static FaultKind ApplyRare(Opcode op, long left, long right, out long result)
    {
        result = 0;
        switch (op)
        {
            case Opcode.Multiply:
                result = left * right;
                break;
            case Opcode.Divide or Opcode.Remainder:
                if (right == 0)
                    return FaultKind.DivisionByZero;
                long rest = left % right;
                if (rest != 0 && (rest < 0) != (right < 0))
                    rest += right;
                result = op == Opcode.Remainder ? rest : (left - rest) / right;
                break;
            case Opcode.ShiftLeft or Opcode.ShiftRight:
                if (right is < 0 or > 31)
                    return FaultKind.BadShift;
                result = op == Opcode.ShiftLeft ? left << (int)right : left >> (int)right;
                break;
            case Opcode.BitAnd:
                result = left & right;
                break;
            case Opcode.BitOr:
                result = left | right;
                break;
            case Opcode.BitXor:
                result = left ^ right;
                break;
            case Opcode.Min:
                result = Math.Min(left, right);
                break;
            default:
                result = Math.Max(left, right);
                break;
        }

        return Math.Abs(result) > AlgorithmLimits.ValueMax ? FaultKind.ValueTooLarge : FaultKind.None;
    }
}
