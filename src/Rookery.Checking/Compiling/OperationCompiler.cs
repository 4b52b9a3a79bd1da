using System.Collections.Immutable;
using Rookery.Checking.Naming;
using Rookery.Checking.Parsing;
using Rookery.Checking.Syntax;
using Rookery.Notation;
using Rookery.Notation.Expressions;

namespace Rookery.Checking.Compiling;

/// <summary>Puts one operation with its arguments into the code of a thread.</summary>
internal sealed class OperationCompiler
{
    private readonly CodeBuilder _code;
    private readonly ScenarioNames _names;
    private readonly OperationSyntax _operation;
    private readonly Dictionary<string, long> _arguments = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _locals = new(StringComparer.Ordinal);
    private readonly List<string> _localNames = [];
    private readonly ExpressionCompiler _expressions;
    private readonly AccessFinder _finder;
    private readonly Func<AccessKind, AccessOrder, int, bool> _isSilent;
    private int _end;

    /// <param name="code">Takes the instructions.</param>
    /// <param name="names">Numbers and shared memory of the scenario.</param>
    /// <param name="operation">The operation.</param>
    /// <param name="arguments">Its arguments.</param>
    /// <param name="isSilent">Whether an access of this kind, order and memory makes no step of its own.</param>
    public OperationCompiler(
        CodeBuilder code, ScenarioNames names, OperationSyntax operation, ImmutableArray<long> arguments,
        Func<AccessKind, AccessOrder, int, bool> isSilent)
    {
        (_code, _names, _operation, _isSilent) = (code, names, operation, isSilent);
        for (int at = 0; at < arguments.Length; at++)
            _arguments[operation.Parameters[at].Text] = arguments[at];
        _expressions = new(code, RegisterOf);
        _finder = new(name => !_locals.ContainsKey(name) && !_arguments.ContainsKey(name) && names.IsShared(name));
    }

    /// <summary>Emits the operation; what follows it comes next.</summary>
    /// <returns>Names of its own, by register.</returns>
    public ImmutableArray<string> Compile()
    {
        _end = _code.NewLabel();
        CompileBody(_operation.Body);
        EmitReturn([], _operation.Name.Span);
        _code.Place(_end);
        _code.NoteLocals(_localNames.Count);
        return [.. _localNames];
    }

    private int RegisterOf(NameExpression name) =>
        _locals.TryGetValue(name.Name, out int local) ? local
        : _code.Constant(
            _arguments.TryGetValue(name.Name, out long argument) ? argument : _names.Number(name.Name), name.Span);

    private void CompileBody(ImmutableArray<Statement> body)
    {
        var outer = new Dictionary<string, int>(_locals, StringComparer.Ordinal);
        foreach (var statement in body)
        {
            int mark = _code.Mark;
            CompileStatement(statement);
            _code.FreeDownTo(mark);
        }

        foreach (string gone in _locals.Keys.Where(name => !outer.ContainsKey(name)).ToArray())
            _locals.Remove(gone);
    }

    private void CompileStatement(Statement statement)
    {
        switch (statement)
        {
            case LetStatement let:
                int value = Read([let.Value], let.Order, let.Span)[0];
                _code.Emit(Opcode.Move, Local(let.Name), value, 0, let.Span);
                break;
            case StoreStatement store:
                CompileStore(store);
                break;
            case UpdateStatement update:
                Read([update.Call], update.Order, update.Span);
                break;
            case FenceStatement fence:
                bool isSilent = BeginStep(AccessKind.Fence, fence.Order, -1, fence.Span);
                EmitAccess(
                    new(AccessKind.Fence, fence.Order, -1, -1, -1, -1, -1, fence.Span.Line, isSilent), fence.Span);
                break;
            case LockStatement locking:
                CompileLock(locking);
                break;
            case AssertStatement assert:
                int holds = Read([assert.Condition.Value], assert.Condition.Order, assert.Span)[0];
                _code.Emit(Opcode.Assert, holds, 0, 0, assert.Span);
                break;
            case ReturnStatement returning:
                CompileReturn(returning);
                break;
            case WhileStatement loop:
                CompileWhile(loop);
                break;
            case IfStatement choice:
                CompileIf(choice);
                break;
            default:
                throw new InvalidOperationException("Not a statement.");
        }
    }

    private void CompileStore(StoreStatement store)
    {
        AccessOrder order = store.Order?.Order ?? AccessOrder.Relaxed;
        int memory = _names.MemoryOf(store.Name.Text);
        bool isSilent = BeginStep(AccessKind.Store, order, memory, store.Span);
        int index = store.Index is null ? -1 : _expressions.Value(store.Index);
        int value = _expressions.Value(store.Value);
        EmitAccess(
            new(AccessKind.Store, order, memory, index, value, -1, -1, store.Span.Line, isSilent), store.Span);
    }

    private void CompileLock(LockStatement locking)
    {
        var kind = locking.IsUnlock ? AccessKind.Unlock : AccessKind.Lock;
        var order = locking.IsUnlock ? AccessOrder.Release : AccessOrder.Acquire;
        int memory = _names.MemoryOf(locking.Name.Text);
        bool isSilent = BeginStep(kind, order, memory, locking.Span);
        EmitAccess(new(kind, order, memory, -1, -1, -1, -1, locking.Span.Line, isSilent), locking.Span);
    }

    private void CompileReturn(ReturnStatement returning)
    {
        var results = new ResultOperand[returning.Values.Length];
        var computed = new List<Expression>();
        for (int at = 0; at < results.Length; at++)
        {
            if (WordOf(returning.Values[at]) is { } word)
                results[at] = new(-1, ResultCode.OfWord(word));
            else
                computed.Add(returning.Values[at]);
        }

        int[] registers = Read([.. computed], returning.Order, returning.Span);
        for (int at = 0, next = 0; at < results.Length; at++)
        {
            if (WordOf(returning.Values[at]) is null)
                results[at] = new(registers[next++], 0);
        }

        EmitReturn(results, returning.Span);
    }

    private void EmitReturn(ResultOperand[] results, SourceSpan span)
    {
        int first = _code.Operands.Count;
        _code.Operands.AddRange(results);
        _code.Emit(Opcode.Return, first, results.Length, 0, span);
        _code.Emit(Opcode.Jump, _end, 0, 0, span);
    }

    private void CompileWhile(WhileStatement loop)
    {
        int again = _code.NewLabel(), end = _code.NewLabel();
        _code.Place(again);
        int mark = _code.Mark;
        int condition = Read([loop.Condition.Value], loop.Condition.Order, loop.Span)[0];
        _code.Emit(Opcode.JumpZero, end, condition, 0, loop.Span);
        _code.FreeDownTo(mark);
        CompileBody(loop.Body);
        _code.Emit(Opcode.Jump, again, 0, 0, loop.Span);
        _code.Place(end);
    }

    private void CompileIf(IfStatement choice)
    {
        int end = _code.NewLabel();
        foreach (var branch in choice.Branches)
        {
            int next = _code.NewLabel();
            int mark = _code.Mark;
            int condition = Read([branch.Condition.Value], branch.Condition.Order, branch.Condition.Span)[0];
            _code.Emit(Opcode.JumpZero, next, condition, 0, branch.Condition.Span);
            _code.FreeDownTo(mark);
            CompileBody(branch.Body);
            _code.Emit(Opcode.Jump, end, 0, 0, branch.Condition.Span);
            _code.Place(next);
        }

        CompileBody(choice.Otherwise);
        _code.Place(end);
    }

    /// <summary>Makes the line's shared access, if it has one, and then computes its expressions.</summary>
    private int[] Read(ImmutableArray<Expression> expressions, OrderMark? mark, SourceSpan span)
    {
        _expressions.Made = default;
        var accesses = _finder.Find(expressions);
        if (accesses.Count > 0)
        {
            var access = accesses[0];
            int memory = _names.MemoryOf(access.Name);
            AccessOrder unmarked = access.Kind == AccessKind.Load ? AccessOrder.Relaxed : AccessOrder.Full;
            AccessOrder order = mark?.Order ?? unmarked;
            bool isSilent = BeginStep(access.Kind, order, memory, span);
            ImmutableArray<Expression> operands =
                access.Node is CallExpression call ? [.. call.Arguments.Skip(1)] : [];
            int index = access.Index is null ? -1 : _expressions.Value(access.Index);
            int first = operands.Length > 0 ? _expressions.Value(operands[0]) : -1;
            int second = operands.Length > 1 ? _expressions.Value(operands[1]) : -1;
            int result = _code.NewScratch(span);
            EmitAccess(
                new(access.Kind, order, memory, index, first, second, result, span.Line, isSilent), span);
            _expressions.Made = (access.Node, result);
        }

        int[] registers = [.. expressions.Select(_expressions.Value)];
        _expressions.Made = default;
        return registers;
    }

    /// <summary>A step ends before a line with an access of its own; what the access needs is computed after.</summary>
    private bool BeginStep(AccessKind kind, AccessOrder order, int memory, SourceSpan span)
    {
        bool isSilent = _isSilent(kind, order, memory);
        if (!isSilent)
            _code.Emit(Opcode.Point, _code.NewPoint(), 0, 0, span);
        return isSilent;
    }

    private void EmitAccess(Access access, SourceSpan span)
    {
        _code.Accesses.Add(access);
        _code.Emit(Opcode.Access, _code.Accesses.Count - 1, 0, 0, span);
    }

    private int Local(NameSyntax name)
    {
        if (_locals.TryGetValue(name.Text, out int register))
            return register;
        if (_localNames.Count == AlgorithmLimits.LocalsMax)
            throw new InputException(BindErrors.TooManyLocals(name.Span, _operation.Name.Text));
        _locals.Add(name.Text, _localNames.Count);
        _localNames.Add(name.Text);
        return _localNames.Count - 1;
    }

    private string? WordOf(Expression value) =>
        value is NameExpression name && !_locals.ContainsKey(name.Name) && !_arguments.ContainsKey(name.Name)
        && !_names.Knows(name.Name) && AlgorithmWords.Results.Contains(name.Name)
            ? name.Name
            : null;
}
