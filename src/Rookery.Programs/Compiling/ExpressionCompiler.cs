using Rookery.Notation.Expressions;

namespace Rookery.Programs.Compiling;

/// <summary>Turns expressions into instructions.</summary>
/// <remarks>
/// Chains are followed with a loop (see <see cref="Expression"/>); recursion only goes into what nests, and that is
/// bounded when the text is read.
/// </remarks>
internal sealed class ExpressionCompiler(CodeBuilder code, Globals globals)
{
    /// <summary>What the names in expressions stand for.</summary>
    public Scope<Local> Scope { get; set; } = new(null);

    /// <summary>Evaluates an expression.</summary>
    /// <returns>The value that holds it; not to be written.</returns>
    public int Value(Expression expression)
    {
        switch (expression)
        {
            case NumberExpression number:
                return code.Constant(number.Value);
            case NameExpression name:
                return Scope.Find(name.Name)?.Value ?? code.Constant(globals.Number(name.Name));
            case CallExpression { Name: "len" } call:
                return code.Constant(globals.RowCount(((NameExpression)call.Arguments[0]).Name));
            default:
                int value = code.NewValue();
                Into(value, expression);
                return value;
        }
    }

    /// <summary>Evaluates an expression into a given value, which is written last.</summary>
    public void Into(int target, Expression expression)
    {
        int mark = code.Mark;
        switch (expression)
        {
            case BinaryExpression binary:
                Chain(target, binary);
                break;
            case UnaryExpression unary:
                var op = unary.Operator == UnaryOperator.Negate ? Opcode.Negate : Opcode.Not;
                code.Emit(op, target, Value(unary.Operand), 0, unary.Span);
                break;
            case ConditionalExpression choice:
                Choice(target, choice);
                break;
            case CallExpression call when call.Name != "len":
                Function(target, call);
                break;
            case IndexExpression index:
                code.Emit(Opcode.Element, target, globals.Column(index.Name), Value(index.Index), index.Span);
                break;
            default:
                code.Emit(Opcode.Move, target, Value(expression), 0, expression.Span);
                break;
        }

        code.FreeDownTo(mark);
    }

    /// <summary>Jumps to a label when a condition is, or is not, true; otherwise goes on.</summary>
    public void Branch(Expression condition, bool when, int label)
    {
        int mark = code.Mark;
        switch (condition)
        {
            case UnaryExpression { Operator: UnaryOperator.Not } not:
                Branch(not.Operand, !when, label);
                break;
            case BinaryExpression { Operator: BinaryOperator.And or BinaryOperator.Or } logical:
                BranchLogical(logical, when, label);
                break;
            case BinaryExpression comparison when IsComparison(comparison.Operator):
                BranchComparison(comparison, when, label);
                break;
            default:
                code.Emit(when ? Opcode.JumpNotZero : Opcode.JumpZero, label, Value(condition), 0, condition.Span);
                break;
        }

        code.FreeDownTo(mark);
    }

    private void BranchLogical(BinaryExpression logical, bool when, int label)
    {
        var operands = new Stack<Expression>();
        Expression at = logical;
        while (at is BinaryExpression binary && binary.Operator == logical.Operator)
        {
            operands.Push(binary.Right);
            at = binary.Left;
        }

        // "a and b" is false as soon as one is, "a or b" is true as soon as one is: then the rest is skipped.
        bool decides = logical.Operator == BinaryOperator.Or;
        int skip = code.NewLabel();
        Branch(at, decides, when == decides ? label : skip);
        while (operands.Count > 1)
            Branch(operands.Pop(), decides, when == decides ? label : skip);
        Branch(operands.Pop(), when, label);
        code.Place(skip);
    }

    private void BranchComparison(BinaryExpression comparison, bool when, int label)
    {
        int left = Value(comparison.Left), right = Value(comparison.Right);
        var (op, isSwapped) = (comparison.Operator, when) switch
        {
            (BinaryOperator.Equal, true) or (BinaryOperator.NotEqual, false) => (Opcode.JumpEqual, false),
            (BinaryOperator.NotEqual, true) or (BinaryOperator.Equal, false) => (Opcode.JumpNotEqual, false),
            (BinaryOperator.Less, true) or (BinaryOperator.GreaterEqual, false) => (Opcode.JumpLess, false),
            (BinaryOperator.Greater, true) or (BinaryOperator.LessEqual, false) => (Opcode.JumpLess, true),
            (BinaryOperator.LessEqual, true) or (BinaryOperator.Greater, false) => (Opcode.JumpLessEqual, false),
            _ => (Opcode.JumpLessEqual, true),
        };
        code.Emit(op, label, isSwapped ? right : left, isSwapped ? left : right, comparison.Span);
    }

    private void Chain(int target, BinaryExpression last)
    {
        var chain = last.Unchain(out var first);
        int left = Value(first);

        // All results in between share one register: each is read only by the instruction that makes the next.
        int shared = chain.Count > 1 ? code.NewValue() : target;
        while (chain.Count > 0)
        {
            var binary = chain.Pop();
            int result = chain.Count == 0 ? target : code.NewValueLike(shared);
            int mark = code.Mark;
            if (binary.Operator is BinaryOperator.And or BinaryOperator.Or)
                ShortCircuit(result, left, binary);
            else
                Apply(result, left, binary);
            code.FreeDownTo(mark);
            left = result;
        }
    }

    private void Apply(int result, int left, BinaryExpression binary)
    {
        int right = Value(binary.Right);
        var (op, isSwapped) = binary.Operator switch
        {
            BinaryOperator.Add => (Opcode.Add, false),
            BinaryOperator.Subtract => (Opcode.Subtract, false),
            BinaryOperator.Multiply => (Opcode.Multiply, false),
            BinaryOperator.Divide => (Opcode.Divide, false),
            BinaryOperator.Remainder => (Opcode.Remainder, false),
            BinaryOperator.BitAnd => (Opcode.BitAnd, false),
            BinaryOperator.BitOr => (Opcode.BitOr, false),
            BinaryOperator.BitXor => (Opcode.BitXor, false),
            BinaryOperator.ShiftLeft => (Opcode.ShiftLeft, false),
            BinaryOperator.ShiftRight => (Opcode.ShiftRight, false),
            BinaryOperator.Equal => (Opcode.Equal, false),
            BinaryOperator.NotEqual => (Opcode.NotEqual, false),
            BinaryOperator.Less => (Opcode.Less, false),
            BinaryOperator.LessEqual => (Opcode.LessEqual, false),
            BinaryOperator.Greater => (Opcode.Less, true),
            BinaryOperator.GreaterEqual => (Opcode.LessEqual, true),
            _ => throw new InvalidOperationException("and, or have instructions of their own."),
        };
        code.Emit(op, result, isSwapped ? right : left, isSwapped ? left : right, binary.Span);
    }

    private void ShortCircuit(int result, int left, BinaryExpression binary)
    {
        bool isOr = binary.Operator == BinaryOperator.Or;
        int decided = code.NewLabel(), end = code.NewLabel();
        code.Emit(isOr ? Opcode.JumpNotZero : Opcode.JumpZero, decided, left, 0, binary.Span);
        code.Emit(Opcode.Truth, result, Value(binary.Right), 0, binary.Span);
        code.Emit(Opcode.Jump, end, 0, 0, binary.Span);
        code.Place(decided);
        code.Emit(Opcode.Move, result, code.Constant(isOr ? 1 : 0), 0, binary.Span);
        code.Place(end);
    }

    private void Choice(int target, ConditionalExpression choice)
    {
        int otherwise = code.NewLabel(), end = code.NewLabel();
        Branch(choice.Condition, false, otherwise);
        Into(target, choice.WhenTrue);
        code.Emit(Opcode.Jump, end, 0, 0, choice.Span);
        code.Place(otherwise);
        Into(target, choice.WhenFalse);
        code.Place(end);
    }

    private void Function(int target, CallExpression call)
    {
        switch (call.Name)
        {
            case "min" or "max":
                var op = call.Name == "min" ? Opcode.Min : Opcode.Max;
                code.Emit(op, target, Value(call.Arguments[0]), Value(call.Arguments[1]), call.Span);
                break;
            case "abs" or "log2" or "sqrt":
                var unary = call.Name == "abs" ? Opcode.Abs : call.Name == "log2" ? Opcode.Log2 : Opcode.Sqrt;
                code.Emit(unary, target, Value(call.Arguments[0]), 0, call.Span);
                break;
            case "sum":
                string column = ((NameExpression)call.Arguments[0]).Name;
                int range = code.AddOperands(Values(call.Arguments.Skip(1)));
                code.Emit(Opcode.Sum, target, globals.Column(column), range, call.Span);
                break;
            default:
                int place = code.AddOperands(Values(call.Arguments));
                code.Emit(Opcode.Pick, target, place, call.Arguments.Length, call.Span);
                break;
        }
    }

    /// <summary>Evaluates several expressions before any is put into the operand table.</summary>
    private List<int> Values(IEnumerable<Expression> expressions) => [.. expressions.Select(Value)];

    private static bool IsComparison(BinaryOperator op) =>
        op is >= BinaryOperator.Equal and <= BinaryOperator.GreaterEqual;
}
