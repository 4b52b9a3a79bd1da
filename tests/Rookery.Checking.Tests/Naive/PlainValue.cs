using Rookery.Notation.Expressions;

namespace Rookery.Checking.Tests.Naive;

/// <summary>Computes expressions by walking them.</summary>
internal static class PlainValue
{
    /// <summary>The value.</summary>
    /// <param name="expression">The expression.</param>
    /// <param name="nameOf">What a name stands for.</param>
    /// <param name="access">What a shared access answers: its node and, for an element, its index.</param>
    public static long Of(
        Expression expression, Func<string, long> nameOf, Func<Expression, long, long> access)
    {
        long Value(Expression inner) => Of(inner, nameOf, access);
        switch (expression)
        {
            case NumberExpression number:
                return number.Value;
            case NameExpression name:
                return nameOf(name.Name);
            case IndexExpression index:
                return access(index, Value(index.Index));
            case UnaryExpression unary:
                long operand = Value(unary.Operand);
                return unary.Operator == UnaryOperator.Negate ? -operand : operand == 0 ? 1 : 0;
            case ConditionalExpression choice:
                return Value(choice.Condition) != 0 ? Value(choice.WhenTrue) : Value(choice.WhenFalse);
            case CallExpression { Name: "min" } call:
                return Math.Min(Value(call.Arguments[0]), Value(call.Arguments[1]));
            case CallExpression { Name: "max" } call:
                return Math.Max(Value(call.Arguments[0]), Value(call.Arguments[1]));
            case CallExpression { Name: "abs" } call:
                return Math.Abs(Value(call.Arguments[0]));
            case CallExpression call:
                return access(call, call.Arguments[0] is IndexExpression place ? Value(place.Index) : 0);
            default:
                return Binary((BinaryExpression)expression, Value);
        }
    }

    private static long Binary(BinaryExpression binary, Func<Expression, long> value)
    {
        long left = value(binary.Left);
        if (binary.Operator == BinaryOperator.And)
            return left != 0 && value(binary.Right) != 0 ? 1 : 0;
        if (binary.Operator == BinaryOperator.Or)
            return left != 0 || value(binary.Right) != 0 ? 1 : 0;
        long right = value(binary.Right);
        return binary.Operator switch
        {
            BinaryOperator.Add => left + right,
            BinaryOperator.Subtract => left - right,
            BinaryOperator.Multiply => left * right,
            BinaryOperator.Divide => (long)Math.Floor((double)left / right),
            BinaryOperator.Remainder => left - (right * (long)Math.Floor((double)left / right)),
            BinaryOperator.Equal => left == right ? 1 : 0,
            BinaryOperator.NotEqual => left != right ? 1 : 0,
            BinaryOperator.Less => left < right ? 1 : 0,
            BinaryOperator.LessEqual => left <= right ? 1 : 0,
            BinaryOperator.Greater => left > right ? 1 : 0,
            BinaryOperator.GreaterEqual => left >= right ? 1 : 0,
            BinaryOperator.BitAnd => left & right,
            BinaryOperator.BitOr => left | right,
            BinaryOperator.BitXor => left ^ right,
            BinaryOperator.ShiftLeft => left << (int)right,
            BinaryOperator.ShiftRight => left >> (int)right,
            BinaryOperator.Or or BinaryOperator.And => throw new InvalidOperationException("Done above."),
        };
    }
}
