using Rookery.Notation;
using Rookery.Notation.Expressions;

namespace Rookery.Checking.Compiling;

/// <summary>Turns expressions into instructions; the shared access in them has been made before.</summary>
/// <param name="code">Takes the instructions.</param>
/// <param name="registerOf">The register of a name that is no shared memory.</param>
internal sealed class ExpressionCompiler(CodeBuilder code, Func<NameExpression, int> registerOf)
{
    /// <summary>The shared access of the line, which has been made already, and the register of its answer.</summary>
    public (Expression? Node, int Register) Made { get; set; }

    /// <summary>Evaluates an expression.</summary>
    /// <returns>The register that holds its value; not to be written.</returns>
    public int Value(Expression expression)
    {
        if (ReferenceEquals(expression, Made.Node))
            return Made.Register;
        switch (expression)
        {
            case NumberExpression number:
                return code.Constant(number.Value, number.Span);
            case NameExpression name:
                return registerOf(name);
            case UnaryExpression unary:
                int operand = Value(unary.Operand);
                return Result(
                    unary.Operator == UnaryOperator.Negate ? Opcode.Negate : Opcode.Not, operand, 0, unary.Span);
            case ConditionalExpression choice:
                return Choice(choice);
            case BinaryExpression binary:
                return Chain(binary);
            default:
                return Call((CallExpression)expression);
        }
    }

    /// <summary>The instruction of an operator, and whether its operands change places.</summary>
    public static Opcode OpcodeOf(BinaryOperator op, out bool isSwapped)
    {
        isSwapped = op is BinaryOperator.Greater or BinaryOperator.GreaterEqual;
        return op switch
        {
            BinaryOperator.Add => Opcode.Add,
            BinaryOperator.Subtract => Opcode.Subtract,
            BinaryOperator.Multiply => Opcode.Multiply,
            BinaryOperator.Divide => Opcode.Divide,
            BinaryOperator.Remainder => Opcode.Remainder,
            BinaryOperator.BitAnd => Opcode.BitAnd,
            BinaryOperator.BitOr => Opcode.BitOr,
            BinaryOperator.BitXor => Opcode.BitXor,
            BinaryOperator.ShiftLeft => Opcode.ShiftLeft,
            BinaryOperator.ShiftRight => Opcode.ShiftRight,
            BinaryOperator.Equal => Opcode.Equal,
            BinaryOperator.NotEqual => Opcode.NotEqual,
            BinaryOperator.Less or BinaryOperator.Greater => Opcode.Less,
            BinaryOperator.LessEqual or BinaryOperator.GreaterEqual => Opcode.LessEqual,
            BinaryOperator.And or BinaryOperator.Or =>
                throw new InvalidOperationException("and, or have instructions of their own."),
        };
    }

    private int Chain(BinaryExpression binary)
    {
        var chain = binary.Unchain(out var first);
        int left = Value(first);
        int shared = -1;
        while (chain.Count > 0)
        {
            var link = chain.Pop();
            shared = shared < 0 ? code.NewScratch(link.Span) : shared;
            int mark = code.Mark;
            if (link.Operator is BinaryOperator.And or BinaryOperator.Or)
            {
                ShortCircuit(shared, left, link);
            }
            else
            {
                int right = Value(link.Right);
                Opcode op = OpcodeOf(link.Operator, out bool isSwapped);
                code.Emit(op, shared, isSwapped ? right : left, isSwapped ? left : right, link.Span);
            }

            code.FreeDownTo(mark);
            left = shared;
        }

        return left;
    }

    private void ShortCircuit(int result, int left, BinaryExpression link)
    {
        bool isOr = link.Operator == BinaryOperator.Or;
        int decided = code.NewLabel(), end = code.NewLabel();
        code.Emit(isOr ? Opcode.JumpNotZero : Opcode.JumpZero, decided, left, 0, link.Span);
        code.Emit(Opcode.Truth, result, Value(link.Right), 0, link.Span);
        code.Emit(Opcode.Jump, end, 0, 0, link.Span);
        code.Place(decided);
        code.Emit(Opcode.Move, result, code.Constant(isOr ? 1 : 0, link.Span), 0, link.Span);
        code.Place(end);
    }

    private int Choice(ConditionalExpression choice)
    {
        int otherwise = code.NewLabel(), end = code.NewLabel();
        int result = code.NewScratch(choice.Span);
        int mark = code.Mark;
        code.Emit(Opcode.JumpZero, otherwise, Value(choice.Condition), 0, choice.Span);
        code.FreeDownTo(mark);
        code.Emit(Opcode.Move, result, Value(choice.WhenTrue), 0, choice.Span);
        code.FreeDownTo(mark);
        code.Emit(Opcode.Jump, end, 0, 0, choice.Span);
        code.Place(otherwise);
        code.Emit(Opcode.Move, result, Value(choice.WhenFalse), 0, choice.Span);
        code.FreeDownTo(mark);
        code.Place(end);
        return result;
    }

    private int Call(CallExpression call)
    {
        int first = Value(call.Arguments[0]);
        if (call.Name == "abs")
            return Result(Opcode.Abs, first, 0, call.Span);
        return Result(call.Name == "min" ? Opcode.Min : Opcode.Max, first, Value(call.Arguments[1]), call.Span);
    }

    private int Result(Opcode op, int b, int c, SourceSpan span)
    {
        int result = code.NewScratch(span);
        code.Emit(op, result, b, c, span);
        return result;
    }
}
