using System.Collections.Immutable;
using Rookery.Notation;
using Rookery.Programs.Syntax;

namespace Rookery.Programs.Compiling;

/// <summary>Turns the statements of one task into code.</summary>
/// <remarks>Mutable, for one task. Recursion follows the blocks of the text, whose nesting is bounded.</remarks>
internal sealed class TaskCompiler
{
    private readonly ProgramCompiler _program;
    private readonly CodeBuilder _code;
    private readonly ExpressionCompiler _expressions;
    private readonly string _taskName;
    private Scope<Local> _scope = new(null);

    private TaskCompiler(ProgramCompiler program, CodeBuilder code, string taskName)
    {
        _program = program;
        _code = code;
        _taskName = taskName;
        _expressions = new(code, program.Globals);

        // What bounds a parallel loop has no name in its body, and must not hide what the body itself names so.
        for (int i = code.Definition.IsLoop ? LoopParameters.Count : 0; i < code.Definition.ParameterNames.Length; i++)
            _scope.Set(code.Definition.ParameterNames[i], new(i));
        _expressions.Scope = _scope;
    }

    /// <summary>Compiles a task of the text.</summary>
    public static void Compile(ProgramCompiler program, CodeBuilder code, TaskSyntax task)
    {
        var compiler = new TaskCompiler(program, code, task.Name.Text);
        compiler.CopyReboundArguments(task);
        compiler.Statements(task.Body);
        compiler.End(task.EndLine, PendingChildren.AfterAll(task.Body, false));
    }

    /// <summary>
    /// Compiles the task made for a parallel loop: halve while longer than the grain, then one after another.
    /// </summary>
    public static void CompileLoop(
        ProgramCompiler program, CodeBuilder code, int self, LoopStatement loop, string taskName)
    {
        var compiler = new TaskCompiler(program, code, taskName);
        compiler.Loop(self, loop);
        compiler.End(loop.EndLine, PendingChildren.AfterAll(loop.Body, false));
    }

    private void Loop(int self, LoopStatement loop)
    {
        int line = loop.Span.Line;
        int whole = _code.NewLabel(), end = _code.NewLabel();
        int middle = _code.NewValue();
        int[] arguments = [.. Enumerable.Range(0, _code.Definition.ParameterNames.Length)];
        int range = _code.AddOperands([LoopParameters.Lower, LoopParameters.Upper, LoopParameters.Grain]);
        _code.Emit(Opcode.Split, whole, range, middle, loop.Span);
        int lowerHalf = _code.AddOperands([LoopParameters.Lower, middle, .. arguments[2..]]);
        int upperHalf = _code.AddOperands([middle, LoopParameters.Upper, .. arguments[2..]]);
        _code.Emit(Opcode.Fork, self, lowerHalf, line, loop.Span);
        _code.Emit(Opcode.Call, self, upperHalf, line, loop.Span);
        _code.Emit(Opcode.Join, 0, 0, line, loop.Span);
        _code.Emit(Opcode.Jump, end, 0, 0, loop.Span);
        _code.Place(whole);
        Repeat(loop, LoopParameters.Lower, LoopParameters.Upper);
        _code.Place(end);
    }

    private void Repeat(LoopStatement loop, int from, int to)
    {
        // The counter is hidden: the body may give its variable another value without changing the loop.
        int counter = _code.NewValue();
        int variable = _code.NewValue();
        int body = _code.NewLabel(), test = _code.NewLabel();
        _code.Emit(Opcode.Move, counter, from, 0, loop.Span);
        _code.Emit(Opcode.Jump, test, 0, 0, loop.Span);
        _code.Place(body);
        _code.Emit(Opcode.Move, variable, counter, 0, loop.Variable.Span);
        InNewScope(() =>
        {
            _scope.Set(loop.Variable.Text, new(variable));
            Statements(loop.Body);
        });
        _code.Emit(Opcode.Increment, counter, 0, 0, loop.Span);
        _code.Place(test);
        _code.Emit(Opcode.JumpLess, body, counter, to, loop.Span);
    }

    private void End(int endLine, bool mayHaveChildren)
    {
        var span = new SourceSpan(endLine, 1, 0);
        if (mayHaveChildren)
            _code.Emit(Opcode.Join, 0, 0, endLine, span);
        _code.Emit(Opcode.End, 0, 0, endLine, span);
    }

    /// <summary>Arguments stay what they were, for labels; those that are given new values live in a local.</summary>
    private void CopyReboundArguments(TaskSyntax task)
    {
        var rebound = LetNames.In(task.Body);
        foreach (var parameter in task.Parameters.Where(p => rebound.Contains(p.Text)))
        {
            int copy = _code.NewValue();
            _code.Emit(Opcode.Move, copy, _scope.Find(parameter.Text)!.Value, 0, parameter.Span);
            _scope.Set(parameter.Text, new(copy));
        }
    }

    private void Statements(ImmutableArray<Statement> statements)
    {
        foreach (var statement in statements)
        {
            if (statement is LetStatement let)
            {
                Let(let);
                continue;
            }

            int mark = _code.Mark;
            Compile(statement);
            _code.FreeDownTo(mark);
        }
    }

    private void Compile(Statement statement)
    {
        int line = statement.Span.Line;
        switch (statement)
        {
            case WorkStatement work:
                var op = work.IsBlock ? Opcode.Block : Opcode.Work;
                _code.Emit(op, _expressions.Value(work.Amount), 0, line, work.Span);
                break;
            case InvokeStatement invoke:
                var values = invoke.Arguments.Select(_expressions.Value).ToList();
                _code.Emit(
                    invoke.IsFork ? Opcode.Fork : Opcode.Call, _program.IndexOf(invoke.Callee.Text),
                    _code.AddOperands(values), line, invoke.Span);
                break;
            case JoinStatement:
                _code.Emit(Opcode.Join, 0, 0, line, statement.Span);
                break;
            case IfStatement choice:
                If(choice);
                break;
            case LoopStatement { IsParallel: true } loop:
                ForkLoop(loop);
                break;
            case LoopStatement loop:
                int from = _expressions.Value(loop.From), to = Kept(_expressions.Value(loop.To), loop);
                Repeat(loop, from, to);
                break;
            default:
                throw new InvalidOperationException("Not a statement of the notation.");
        }
    }

    /// <summary>
    /// A copy that the loop's body cannot change, should the end be a local that it gives a new value.
    /// </summary>
    private int Kept(int value, LoopStatement loop)
    {
        int copy = _code.NewValue();
        _code.Emit(Opcode.Move, copy, value, 0, loop.Span);
        return copy;
    }

    private void Let(LetStatement let)
    {
        var known = _scope.Find(let.Name.Text);
        int target = known?.Value ?? _code.NewValue();
        _expressions.Into(target, let.Value);
        if (known is null)
            _scope.Set(let.Name.Text, new(target));
    }

    private void If(IfStatement choice)
    {
        int end = _code.NewLabel();
        foreach (var branch in choice.Branches)
        {
            int next = _code.NewLabel();
            _expressions.Branch(branch.Condition, false, next);
            InNewScope(() => Statements(branch.Body));
            _code.Emit(Opcode.Jump, end, 0, 0, choice.Span);
            _code.Place(next);
        }

        InNewScope(() => Statements(choice.Otherwise));
        _code.Place(end);
    }

    private void ForkLoop(LoopStatement loop)
    {
        int from = _expressions.Value(loop.From), to = _expressions.Value(loop.To);
        int grain = loop.Grain is null ? _code.Constant(1) : _expressions.Value(loop.Grain);
        string[] captured = [.. UsedNames.In(loop.Body).Where(name => _scope.Find(name) is not null)];
        int child = _program.AddLoop(loop, captured, _taskName);
        int end = _code.NewLabel();
        var values = captured.Select(name => _scope.Find(name)!.Value);
        _code.Emit(Opcode.JumpLessEqual, end, to, from, loop.Span);
        _code.Emit(Opcode.Fork, child, _code.AddOperands([from, to, grain, .. values]), loop.Span.Line, loop.Span);
        _code.Place(end);
    }

    private void InNewScope(Action compile)
    {
        int mark = _code.Mark;
        var outer = _scope;
        _scope = new(outer);
        _expressions.Scope = _scope;
        compile();
        _scope = outer;
        _expressions.Scope = outer;
        _code.FreeDownTo(mark);
    }
}
