using Rookery.Notation;
using Rookery.Notation.Expressions;

namespace Rookery.Checking.Compiling;

/// <summary>Computes an expression at once: sizes, arguments, conditions over the end.</summary>
/// <param name="nameOf">The value of a name.</param>
/// <param name="elementOf">The value of an element; null where there are none.</param>
/// <param name="scenario">For messages.</param>
internal sealed class Evaluator(
    Func<NameExpression, long> nameOf, Func<IndexExpression, long, long>? elementOf, string scenario)
{
    /// <summary>The value.</summary>
    /// <exception cref="InputException">There is none: a division by zero, or too large a value.</exception>
    public long Value(Expression expression)
    {
        switch (expression)
        {
            case NumberExpression number:
                return Checked(number.Value, number.Span);
            case NameExpression name:
                return Checked(nameOf(name), name.Span);
            case UnaryExpression unary:
                long operand = Value(unary.Operand);
                return unary.Operator == UnaryOperator.Negate ? -operand : operand == 0 ? 1 : 0;
            case ConditionalExpression choice:
                return Value(Value(choice.Condition) != 0 ? choice.WhenTrue : choice.WhenFalse);
            case BinaryExpression binary:
                return Chain(binary);
            case IndexExpression index:
                return Checked(elementOf!(index, Value(index.Index)), index.Span);
            default:
                return Call((CallExpression)expression);
        }
    }

    private long Chain(BinaryExpression binary)
    {
        var chain = binary.Unchain(out var first);
        long left = Value(first);
        foreach (var link in chain)
        {
            if (link.Operator == BinaryOperator.And)
                left = left != 0 && Value(link.Right) != 0 ? 1 : 0;
            else if (link.Operator == BinaryOperator.Or)
                left = left != 0 || Value(link.Right) != 0 ? 1 : 0;
            else
                left = Apply(link, left, Value(link.Right));
        }

        return left;
    }

    private long Apply(BinaryExpression link, long left, long right)
    {
        Opcode op = ExpressionCompiler.OpcodeOf(link.Operator, out bool isSwapped);
        if (isSwapped)
            (left, right) = (right, left);
        FaultKind fault = Arithmetic.Apply(op, left, right, out long result);
        return fault switch
        {
            FaultKind.None => result,
            FaultKind.DivisionByZero => throw new InputException(BindErrors.DivisionByZero(link.Span, scenario)),
            FaultKind.BadShift => throw new InputException(BindErrors.ShiftOutOfRange(link.Span, right, scenario)),
            _ => throw new InputException(BindErrors.ValueTooLarge(link.Span, scenario)),
        };
    }

    private long Call(CallExpression call)
    {
        long first = Value(call.Arguments[0]);
        return call.Name switch
        {
            "abs" => Math.Abs(first),
            "min" => Math.Min(first, Value(call.Arguments[1])),
            _ => Math.Max(first, Value(call.Arguments[1])),
        };
    }

    private long Checked(long value, SourceSpan span) =>
        value is >= -AlgorithmLimits.ValueMax and <= AlgorithmLimits.ValueMax
            ? value
            : throw new InputException(BindErrors.ValueTooLarge(span, scenario));
}
