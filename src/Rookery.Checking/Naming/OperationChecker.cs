using System.Collections.Immutable;
using Rookery.Checking.Parsing;
using Rookery.Checking.Syntax;
using Rookery.Notation;
using Rookery.Notation.Expressions;

namespace Rookery.Checking.Naming;

/// <summary>Checks the lines of one operation.</summary>
/// <remarks>A name that a block gives ends with the block, as in programs.</remarks>
internal sealed class OperationChecker
{
    private readonly GlobalNames _globals;
    private readonly DiagnosticList _errors;
    private readonly LineChecker _lines;
    private readonly HashSet<string> _arguments = new(StringComparer.Ordinal);
    private readonly Stack<HashSet<string>> _scopes = new();

    public OperationChecker(GlobalNames globals, DiagnosticList errors)
    {
        (_globals, _errors) = (globals, errors);
        _lines = new(globals, IsLocal, () => _scopes.SelectMany(scope => scope).Concat(_arguments), errors);
    }

    public void Check(OperationSyntax operation)
    {
        foreach (var argument in operation.Parameters)
        {
            if (_globals.Find(argument.Text) is { } global)
                _errors.Add(NameErrors.Duplicate(argument.Span, argument.Text, global.What, global.Span.Line));
            else if (!_arguments.Add(argument.Text))
                _errors.Add(NameErrors.Duplicate(argument.Span, argument.Text, "an argument", argument.Span.Line));
        }

        CheckBody(operation.Body);
    }

    private bool IsLocal(string name) => _arguments.Contains(name) || _scopes.Any(scope => scope.Contains(name));

    private void CheckBody(ImmutableArray<Statement> body)
    {
        _scopes.Push(new(StringComparer.Ordinal));
        foreach (var statement in body)
            CheckStatement(statement);
        _scopes.Pop();
    }

    private void CheckStatement(Statement statement)
    {
        switch (statement)
        {
            case LetStatement let:
                _lines.CheckReading([let.Value], let.Order);
                Declare(let.Name);
                break;
            case StoreStatement store:
                _lines.CheckStore(store);
                break;
            case UpdateStatement update:
                CheckUpdate(update);
                break;
            case LockStatement locking:
                CheckLock(locking);
                break;
            case AssertStatement assert:
                _lines.CheckReading([assert.Condition.Value], assert.Condition.Order);
                break;
            case ReturnStatement returning:
                CheckReturn(returning);
                break;
            case WhileStatement loop:
                _lines.CheckReading([loop.Condition.Value], loop.Condition.Order);
                CheckBody(loop.Body);
                break;
            case IfStatement choice:
                foreach (var branch in choice.Branches)
                {
                    _lines.CheckReading([branch.Condition.Value], branch.Condition.Order);
                    CheckBody(branch.Body);
                }

                CheckBody(choice.Otherwise);
                break;
            default:
                break;
        }
    }

    private void CheckUpdate(UpdateStatement update)
    {
        if (update.Call is CallExpression call && AccessFinder.KindOf(call.Name) is not null)
            _lines.CheckReading([update.Call], update.Order);
        else
            _errors.Add(AlgorithmErrors.UnknownStatement(update.Span, "an expression", "its value is never used"));
    }

    private void CheckLock(LockStatement locking)
    {
        var global = _globals.Find(locking.Name.Text);
        if (IsLocal(locking.Name.Text))
            _errors.Add(NameErrors.NotShared(locking.Name.Span, locking.Name.Text, "a name of this operation's own"));
        else if (global is null)
            _errors.Add(NameErrors.UnknownName(
                locking.Name.Span, locking.Name.Text, Suggestion.Hint(locking.Name.Text, _globals.Words)));
        else if (!global.IsShared)
            _errors.Add(NameErrors.NotShared(locking.Name.Span, locking.Name.Text, global.What));
        else if (global.IsArray)
            _errors.Add(NameErrors.LockArray(locking.Name));
    }

    private void CheckReturn(ReturnStatement returning)
    {
        if (returning.Values.Length > AlgorithmLimits.ResultsMax)
            _errors.Add(NameErrors.TooMany(returning.Span, "results of one operation", AlgorithmLimits.ResultsMax));

        // A word such as empty is an answer, not a name, unless the file gives that name to something.
        bool IsAnswer(Expression value) => value is NameExpression name && !IsLocal(name.Name)
            && _globals.Find(name.Name) is null && AlgorithmWords.Results.Contains(name.Name);
        _lines.CheckReading([.. returning.Values.Where(value => !IsAnswer(value))], returning.Order);
    }

    private void Declare(NameSyntax name)
    {
        if (_arguments.Contains(name.Text))
            _errors.Add(NameErrors.AssignsArgument(name));
        else if (_globals.Find(name.Text) is { } global)
            _errors.Add(NameErrors.Duplicate(name.Span, name.Text, global.What, global.Span.Line));
        else if (!IsLocal(name.Text))
            _scopes.Peek().Add(name.Text);
    }
}
