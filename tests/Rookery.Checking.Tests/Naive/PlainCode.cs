using System.Collections.Immutable;
using Rookery.Checking.Naming;
using Rookery.Checking.Parsing;
using Rookery.Checking.Syntax;
using Rookery.Notation;
using Rookery.Notation.Expressions;

namespace Rookery.Checking.Tests.Naive;

/// <summary>A scenario in the plainest form: for each thread its lines, one after the other, with jumps.</summary>
/// <remarks>Made from the syntax alone; shares nothing with the compiler of the checker.</remarks>
internal sealed class PlainCode
{
    private readonly AlgorithmSyntax _syntax;
    private readonly Dictionary<string, long> _numbers = new(StringComparer.Ordinal);
    private readonly Dictionary<string, long> _arguments = new(StringComparer.Ordinal);
    private readonly List<PlainLine> _lines = [];
    private int _invocation;

    public PlainCode(string text, string scenario)
    {
        var errors = new DiagnosticList();
        _syntax = new AlgorithmParser(new("plain", text), errors).Parse();
        if (!errors.IsEmpty)
            throw new InputException(errors.ToImmutable());
        var chosen = _syntax.Scenarios.First(one => one.Name == scenario);
        foreach (var parameter in _syntax.Parameters)
            _numbers[parameter.Name.Text] = parameter.Default;
        foreach (var binding in chosen.Bindings)
            _numbers[binding.Name.Text] = binding.Value.Value;
        foreach (var constant in _syntax.Constants)
            _numbers[constant.Name.Text] = Number(constant.Value);
        foreach (var shared in _syntax.Shared)
        {
            int size = shared.Size is null ? 1 : (int)Number(shared.Size);
            long initial = shared.Initial is null ? 0 : Number(shared.Initial);
            Memory.Add((shared.Name.Text, size, initial, shared.Size is not null));
        }

        foreach (var thread in chosen.Threads)
        {
            _lines.Clear();
            foreach (var one in thread.Invocations)
                AddInvocation(one);
            _lines.Add(new(PlainKind.End, "", null, [], default, 0, _invocation));
            Threads.Add([.. _lines]);
        }

        Observed = [.. _syntax.Observed.Select(name => name.Text)];
    }

    public List<(string Name, int Size, long Initial, bool IsArray)> Memory { get; } = [];

    public List<ImmutableArray<PlainLine>> Threads { get; } = [];

    /// <summary>Arguments of each operation, by its number.</summary>
    public List<ImmutableArray<long>> Invocations { get; } = [];

    /// <summary>How many results each operation has at most.</summary>
    public List<int> ResultCounts { get; } = [];

    public ImmutableArray<string> Observed { get; }

    public bool IsShared(string name) => Memory.Any(memory => memory.Name == name);

    /// <summary>Whether a line makes a shared access, so that a step begins with it.</summary>
    public bool IsAccess(PlainLine line, Func<AccessOrder, bool> isFenceStep) => line.Kind switch
    {
        PlainKind.Store or PlainKind.Lock or PlainKind.Unlock or PlainKind.Update => true,
        PlainKind.Fence => isFenceStep(line.Order),
        _ => Access(line) is not null,
    };

    /// <summary>The shared access in a line's expressions.</summary>
    public SharedAccess? Access(PlainLine line) =>
        new AccessFinder(IsShared).Find(line.Values).FirstOrDefault();

    private void AddInvocation(InvocationSyntax one)
    {
        var operation = _syntax.Operations.First(op => op.Name.Text == one.Operation.Text);
        ImmutableArray<long> arguments = [.. one.Arguments.Select(Number)];
        _arguments.Clear();
        for (int at = 0; at < arguments.Length; at++)
            _arguments[operation.Parameters[at].Text] = arguments[at];
        _invocation = Invocations.Count;
        Invocations.Add(arguments);
        ResultCounts.Add(0);
        AddBody(operation.Body);
        Add(PlainKind.Return);
    }

    private void AddBody(ImmutableArray<Statement> body)
    {
        foreach (var statement in body)
            AddStatement(statement);
    }

    private void AddStatement(Statement statement)
    {
        switch (statement)
        {
            case LetStatement let:
                Add(PlainKind.Let, let.Name.Text, values: [let.Value]);
                break;
            case StoreStatement store:
                Add(PlainKind.Store, store.Name.Text, store.Index, [store.Value]);
                break;
            case UpdateStatement update:
                Add(PlainKind.Update, values: [update.Call]);
                break;
            case FenceStatement fence:
                Add(PlainKind.Fence, order: fence.Order);
                break;
            case LockStatement locking:
                Add(locking.IsUnlock ? PlainKind.Unlock : PlainKind.Lock, locking.Name.Text);
                break;
            case ReturnStatement returning:
                ResultCounts[_invocation] = Math.Max(ResultCounts[_invocation], returning.Values.Length);
                Add(PlainKind.Return, values: returning.Values);
                break;
            case WhileStatement loop:
                int again = _lines.Count;
                int exit = AddBranch(loop.Condition.Value);
                AddBody(loop.Body);
                Add(PlainKind.Goto, target: again);
                _lines[exit] = _lines[exit] with { Target = _lines.Count };
                break;
            case IfStatement choice:
                AddIf(choice);
                break;
            default:
                throw new InvalidOperationException("Not part of the plain notation.");
        }
    }

    private void AddIf(IfStatement choice)
    {
        var ends = new List<int>();
        foreach (var branch in choice.Branches)
        {
            int next = AddBranch(branch.Condition.Value);
            AddBody(branch.Body);
            ends.Add(_lines.Count);
            Add(PlainKind.Goto);
            _lines[next] = _lines[next] with { Target = _lines.Count };
        }

        AddBody(choice.Otherwise);
        foreach (int end in ends)
            _lines[end] = _lines[end] with { Target = _lines.Count };
    }

    /// <summary>Adds a jump that is taken when a condition is not true.</summary>
    private int AddBranch(Expression condition)
    {
        Add(PlainKind.Branch, values: [condition]);
        return _lines.Count - 1;
    }

    private void Add(
        PlainKind kind, string name = "", Expression? index = null, ImmutableArray<Expression> values = default,
        AccessOrder order = default, int target = 0) => _lines.Add(new(
            kind, name, index is null ? null : Replaced(index),
            values.IsDefault ? [] : [.. values.Select(Replaced)], order, target, _invocation));

    private long Number(Expression expression) => PlainValue.Of(Replaced(expression), _ => 0, (_, _) => 0);

    /// <summary>The same with numbers in the places of arguments, parameters and constants.</summary>
    private Expression Replaced(Expression expression) => expression switch
    {
        NameExpression name when _arguments.TryGetValue(name.Name, out long value) =>
            new NumberExpression(name.Span, value),
        NameExpression name when _numbers.TryGetValue(name.Name, out long value) =>
            new NumberExpression(name.Span, value),
        BinaryExpression binary => new BinaryExpression(
            binary.Span, binary.Operator, Replaced(binary.Left), Replaced(binary.Right)),
        UnaryExpression unary => new UnaryExpression(unary.Span, unary.Operator, Replaced(unary.Operand)),
        ConditionalExpression choice => new ConditionalExpression(
            choice.Span, Replaced(choice.Condition), Replaced(choice.WhenTrue), Replaced(choice.WhenFalse)),
        IndexExpression index => new IndexExpression(index.Span, index.Name, Replaced(index.Index)),
        CallExpression call => new CallExpression(call.Span, call.Name, [.. call.Arguments.Select(Replaced)]),
        _ => expression,
    };
}
