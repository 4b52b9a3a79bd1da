namespace Rookery.Notation.Expressions;

/// <summary>Operands and operators that wait for what follows; the two stacks of the shunting yard.</summary>
/// <remarks>Mutable, for one expression.</remarks>
internal sealed class OperatorStack
{
    private readonly Stack<Expression> _values = new();
    private readonly Stack<Pending> _pending = new();

    public void PushValue(Expression value) => _values.Push(value);

    public void PushPrefix(UnaryOperator op, int level, SourceSpan span) =>
        _pending.Push(new(op, default, level, span));

    /// <summary>Takes an operator; false when it would chain two comparisons.</summary>
    public bool TryPushBinary(BinaryOperator op, int level, SourceSpan span)
    {
        while (_pending.Count > 0 && _pending.Peek().Level >= level)
        {
            var top = _pending.Peek();
            if (level == Precedence.Comparison && top.Level == level)
                return false;
            Apply();
        }

        _pending.Push(new(null, op, level, span));
        return true;
    }

    /// <summary>The whole expression.</summary>
    public Expression Finish()
    {
        while (_pending.Count > 0)
            Apply();
        return _values.Pop();
    }

    private void Apply()
    {
        var top = _pending.Pop();
        var right = _values.Pop();
        _values.Push(top.Prefix is { } prefix
            ? new UnaryExpression(top.Span, prefix, right)
            : new BinaryExpression(top.Span, top.Infix, _values.Pop(), right));
    }

    private readonly record struct Pending(UnaryOperator? Prefix, BinaryOperator Infix, int Level, SourceSpan Span);
}
