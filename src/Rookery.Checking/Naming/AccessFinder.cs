using Rookery.Notation.Expressions;

namespace Rookery.Checking.Naming;

/// <summary>Finds the shared accesses in expressions, in the order of evaluation.</summary>
/// <param name="isShared">Whether a name is one of shared memory.</param>
internal sealed class AccessFinder(Func<string, bool> isShared)
{
    /// <summary>All accesses of one line's expressions.</summary>
    public List<SharedAccess> Find(IEnumerable<Expression> expressions)
    {
        var found = new List<SharedAccess>();
        foreach (var expression in expressions)
            Walk(expression, false, found);
        return found;
    }

    /// <summary>What a call such as <c>cas(top, t, t + 1)</c> does; null for a function that only computes.</summary>
    public static AccessKind? KindOf(string function) => function switch
    {
        "cas" => AccessKind.CompareAndSwap,
        "add" => AccessKind.Add,
        "swap" => AccessKind.Swap,
        _ => null,
    };

    private void Walk(Expression expression, bool isConditional, List<SharedAccess> found)
    {
        switch (expression)
        {
            case NameExpression name when isShared(name.Name):
                found.Add(new(name, AccessKind.Load, name.Name, null, isConditional));
                break;
            case IndexExpression index:
                Walk(index.Index, isConditional, found);
                found.Add(new(index, AccessKind.Load, index.Name, index.Index, isConditional));
                break;
            case BinaryExpression binary:
                WalkChain(binary, isConditional, found);
                break;
            case UnaryExpression unary:
                Walk(unary.Operand, isConditional, found);
                break;
            case ConditionalExpression choice:
                Walk(choice.Condition, isConditional, found);
                Walk(choice.WhenTrue, true, found);
                Walk(choice.WhenFalse, true, found);
                break;
            case CallExpression call:
                WalkCall(call, isConditional, found);
                break;
            default:
                break;
        }
    }

    private void WalkChain(BinaryExpression binary, bool isConditional, List<SharedAccess> found)
    {
        var chain = binary.Unchain(out var first);
        Walk(first, isConditional, found);
        bool isLate = isConditional;
        foreach (var link in chain)
        {
            bool decides = link.Operator is BinaryOperator.And or BinaryOperator.Or;
            Walk(link.Right, isLate || decides, found);
        }
    }

    private void WalkCall(CallExpression call, bool isConditional, List<SharedAccess> found)
    {
        AccessKind? kind = KindOf(call.Name);
        foreach (var argument in kind is null ? call.Arguments : call.Arguments.Skip(1))
            Walk(argument, isConditional, found);
        if (kind is null || call.Arguments.IsEmpty)
            return;
        if (call.Arguments[0] is IndexExpression place)
        {
            Walk(place.Index, isConditional, found);
            found.Add(new(call, kind.Value, place.Name, place.Index, isConditional));
        }
        else if (call.Arguments[0] is NameExpression name)
        {
            found.Add(new(call, kind.Value, name.Name, null, isConditional));
        }
    }
}
