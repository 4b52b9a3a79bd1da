using System.Collections.Immutable;
using Rookery.Checking.Naming;
using Rookery.Checking.Syntax;
using Rookery.Notation.Expressions;

namespace Rookery.Checking.Compiling;

/// <summary>Which shared names an operation may write.</summary>
internal sealed class AccessSummary
{
    private readonly HashSet<string> _written = new(StringComparer.Ordinal);
    private readonly AccessFinder _finder;

    public AccessSummary(OperationSyntax operation, Func<string, bool> isShared)
    {
        _finder = new(isShared);
        Walk(operation.Body);
    }

    public IReadOnlySet<string> Written => _written;

    private void Walk(ImmutableArray<Statement> body)
    {
        foreach (var statement in body)
            Walk(statement);
    }

    private void Walk(Statement statement)
    {
        switch (statement)
        {
            case StoreStatement store:
                _written.Add(store.Name.Text);
                break;
            case LockStatement locking:
                _written.Add(locking.Name.Text);
                break;
            case LetStatement let:
                Note([let.Value]);
                break;
            case UpdateStatement update:
                Note([update.Call]);
                break;
            case AssertStatement assert:
                Note([assert.Condition.Value]);
                break;
            case ReturnStatement returning:
                Note(returning.Values);
                break;
            case WhileStatement loop:
                Note([loop.Condition.Value]);
                Walk(loop.Body);
                break;
            case IfStatement choice:
                foreach (var branch in choice.Branches)
                {
                    Note([branch.Condition.Value]);
                    Walk(branch.Body);
                }

                Walk(choice.Otherwise);
                break;
            default:
                break;
        }
    }

    private void Note(ImmutableArray<Expression> expressions)
    {
        foreach (var access in _finder.Find(expressions))
        {
            if (access.Kind != AccessKind.Load)
                _written.Add(access.Name);
        }
    }
}
