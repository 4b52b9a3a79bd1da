using Rookery.Notation;
using Rookery.Programs.Syntax;

namespace Rookery.Programs.Checking;

/// <summary>Finds what is wrong with a program whose lines are right by themselves.</summary>
internal sealed class ProgramChecker(ProgramSyntax syntax, DiagnosticList errors)
{
    private readonly Dictionary<string, GlobalName> _globals = new(StringComparer.Ordinal);
    private readonly Dictionary<string, TaskSyntax> _tasks = new(StringComparer.Ordinal);

    public void Check()
    {
        foreach (var declaration in syntax.Declarations)
            Declare(declaration);
        foreach (var task in syntax.Tasks)
            Declare(task);
        foreach (var constant in syntax.Declarations.OfType<ConstantDeclaration>())
        {
            var checker = new ExpressionChecker(_globals, errors) { HiddenFromLine = constant.Span.Line };
            checker.Check(constant.Value);
        }

        foreach (var task in syntax.Tasks)
            new TaskChecker(_globals, _tasks, errors).Check(task);
        CheckStart();
    }

    private void Declare(Declaration declaration)
    {
        string what = declaration switch
        {
            ParameterDeclaration => "a parameter",
            ConstantDeclaration => "a constant",
            _ => "data",
        };
        if (IsNew(declaration.Name, declaration.Span))
            _globals.Add(declaration.Name, new(declaration.Span.Line, what, declaration is DataDeclaration));
        if (declaration is ParameterDeclaration parameter)
            CheckRange(parameter);
        if (declaration is DataDeclaration data && DataPath.ProblemOf(data.File) is { } problem)
            errors.Add(CheckErrors.PathLeaves(data, problem));
    }

    private void Declare(TaskSyntax task)
    {
        // A task whose name is taken is still called by it: one error is enough.
        _ = IsNew(task.Name.Text, task.Name.Span);
        _tasks.TryAdd(task.Name.Text, task);
    }

    private bool IsNew(string name, SourceSpan span)
    {
        if (_globals.TryGetValue(name, out var global))
            errors.Add(CheckErrors.Duplicate(span, name, global.What, global.Line));
        else if (_tasks.TryGetValue(name, out var task))
            errors.Add(CheckErrors.Duplicate(span, name, "a task", task.Name.Span.Line));
        else
            return true;
        return false;
    }

    private void CheckRange(ParameterDeclaration parameter)
    {
        if (parameter.Min > parameter.Max)
            errors.Add(CheckErrors.EmptyRange(parameter));
        else if (parameter.Default < parameter.Min || parameter.Default > parameter.Max)
            errors.Add(CheckErrors.DefaultOutOfRange(parameter));
    }

    private void CheckStart()
    {
        if (syntax.Starts.IsEmpty)
        {
            errors.Add(CheckErrors.StartMissing());
            return;
        }

        foreach (var second in syntax.Starts.Skip(1))
            errors.Add(CheckErrors.SecondStart(second.Span, syntax.Starts[0].Span.Line));
        var checker = new TaskChecker(_globals, _tasks, errors);
        foreach (var start in syntax.Starts)
            checker.CheckInvocation(start.Callee, start.Arguments);
    }
}
