using System.Collections.Immutable;
using Rookery.Notation;
using Rookery.Notation.Expressions;
using Rookery.Programs.Compiling;
using Rookery.Programs.Syntax;

namespace Rookery.Programs.Checking;

/// <summary>Looks up every name in one task and follows which locals are visible where.</summary>
/// <remarks>Mutable, for one task. Recursion follows the blocks of the text, whose nesting is bounded.</remarks>
internal sealed class TaskChecker
{
    private readonly Dictionary<string, GlobalName> _globals;
    private readonly Dictionary<string, TaskSyntax> _tasks;
    private readonly DiagnosticList _errors;
    private readonly ExpressionChecker _expressions;
    private Scope<CheckedLocal> _scope = new(null);
    private int _parallelDepth;

    public TaskChecker(
        Dictionary<string, GlobalName> globals, Dictionary<string, TaskSyntax> tasks, DiagnosticList errors)
    {
        _globals = globals;
        _tasks = tasks;
        _errors = errors;
        _expressions = new(globals, errors);
        _expressions.Scope = _scope;
    }

    public void Check(TaskSyntax task)
    {
        foreach (var parameter in task.Parameters)
            Declare(parameter);
        CheckAll(task.Body);
    }

    /// <summary>Checks that a task exists and gets as many arguments as it takes.</summary>
    public void CheckInvocation(NameSyntax callee, ImmutableArray<Expression> arguments)
    {
        if (!_tasks.TryGetValue(callee.Text, out var task))
            _errors.Add(CheckErrors.UnknownTask(callee, HintFor(callee.Text)));
        else if (task.Parameters.Length != arguments.Length)
            _errors.Add(CheckErrors.TaskArity(callee, arguments.Length, task));
        _expressions.CheckAll(arguments);
    }

    private string HintFor(string task) => _errors.IsFull ? "" : Suggestion.Hint(task, _tasks.Keys);

    private void CheckAll(ImmutableArray<Statement> statements)
    {
        foreach (var statement in statements)
            Check(statement);
    }

    private void Check(Statement statement)
    {
        switch (statement)
        {
            case WorkStatement work:
                _expressions.Check(work.Amount);
                break;
            case InvokeStatement invoke:
                CheckInvocation(invoke.Callee, invoke.Arguments);
                break;
            case LetStatement let:
                _expressions.Check(let.Value);
                CheckLet(let.Name);
                break;
            case IfStatement choice:
                foreach (var branch in choice.Branches)
                {
                    _expressions.Check(branch.Condition);
                    InNewScope(() => CheckAll(branch.Body));
                }

                InNewScope(() => CheckAll(choice.Otherwise));
                break;
            case LoopStatement loop:
                CheckLoop(loop);
                break;
            default:
                break;
        }
    }

    private void CheckLoop(LoopStatement loop)
    {
        _expressions.CheckAll([loop.From, loop.To]);
        if (loop.Grain is not null)
            _expressions.Check(loop.Grain);
        int step = loop.IsParallel ? 1 : 0;
        _parallelDepth += step;
        InNewScope(() =>
        {
            Declare(loop.Variable);
            CheckAll(loop.Body);
        });
        _parallelDepth -= step;
    }

    private void CheckLet(NameSyntax name)
    {
        var known = _scope.Find(name.Text);
        if (known is null)
            Declare(name);
        else if (known.ParallelDepth < _parallelDepth)
            _errors.Add(CheckErrors.Captured(name, known.Line));
    }

    private void Declare(NameSyntax name)
    {
        if (_scope.Find(name.Text) is { } known)
            _errors.Add(CheckErrors.Duplicate(name.Span, name.Text, "a name of this task", known.Line));
        else if (_globals.TryGetValue(name.Text, out var global))
            _errors.Add(CheckErrors.SetsGlobal(name, global.What, global.Line));
        else
            _scope.Set(name.Text, new(name.Span.Line, _parallelDepth));
    }

    private void InNewScope(Action check)
    {
        var outer = _scope;
        _scope = new(outer);
        _expressions.Scope = _scope;
        check();
        foreach (string name in _scope.OwnNames)
            _expressions.Gone[name] = _scope.Find(name)!.Line;
        _scope = outer;
        _expressions.Scope = outer;
    }
}
