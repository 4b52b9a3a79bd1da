using System.Collections.Immutable;
using Rookery.Notation.Expressions;
using Rookery.Programs.Syntax;

namespace Rookery.Programs.Compiling;

/// <summary>Finds the names that statements read, in order of first use.</summary>
internal sealed class UsedNames
{
    private readonly HashSet<string> _seen = new(StringComparer.Ordinal);
    private readonly List<string> _names = [];

    public static List<string> In(ImmutableArray<Statement> statements)
    {
        var used = new UsedNames();
        used.AddAll(statements);
        return used._names;
    }

    private void AddAll(ImmutableArray<Statement> statements)
    {
        foreach (var statement in statements)
            Add(statement);
    }

    private void Add(Statement statement)
    {
        switch (statement)
        {
            case WorkStatement work:
                Add(work.Amount);
                break;
            case InvokeStatement invoke:
                AddAll(invoke.Arguments);
                break;
            case LetStatement let:
                Add(let.Value);
                break;
            case LoopStatement loop:
                AddAll([loop.From, loop.To]);
                if (loop.Grain is not null)
                    Add(loop.Grain);
                AddAll(loop.Body);
                break;
            case IfStatement choice:
                foreach (var branch in choice.Branches)
                {
                    Add(branch.Condition);
                    AddAll(branch.Body);
                }

                AddAll(choice.Otherwise);
                break;
            default:
                break;
        }
    }

    private void AddAll(ImmutableArray<Expression> expressions)
    {
        foreach (var expression in expressions)
            Add(expression);
    }

    private void Add(Expression expression)
    {
        switch (expression)
        {
            case NameExpression name when _seen.Add(name.Name):
                _names.Add(name.Name);
                break;
            case BinaryExpression binary:
                var chain = binary.Unchain(out var first);
                Add(first);
                foreach (var link in chain)
                    Add(link.Right);
                break;
            case UnaryExpression unary:
                Add(unary.Operand);
                break;
            case ConditionalExpression choice:
                AddAll([choice.Condition, choice.WhenTrue, choice.WhenFalse]);
                break;
            case CallExpression call:
                AddAll(call.Arguments);
                break;
            case IndexExpression index:
                Add(index.Index);
                break;
            default:
                break;
        }
    }
}
