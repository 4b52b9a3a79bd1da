using System.Collections.Immutable;
using Rookery.Checking.Naming;
using Rookery.Checking.Syntax;
using Rookery.Notation;

namespace Rookery.Checking.Compiling;

/// <summary>Makes code of a scenario.</summary>
internal sealed class ScenarioCompiler
{
    private readonly AlgorithmSyntax _syntax;
    private readonly ScenarioSyntax _scenario;
    private readonly MemoryModel _model;
    private readonly bool _reduces;
    private readonly ScenarioNames _names;
    private readonly List<Invocation> _invocations = [];
    private readonly ImmutableArray<ImmutableHashSet<string>> _written;

    private ScenarioCompiler(AlgorithmSyntax syntax, ScenarioSyntax scenario, MemoryModel model, bool reduces)
    {
        (_syntax, _scenario, _model, _reduces) = (syntax, scenario, model, reduces);
        _names = new(syntax, scenario);
        _written = [.. scenario.Threads.Select(thread => thread.Invocations
            .SelectMany(one => new AccessSummary(Find(one.Operation.Text), _names.IsShared).Written)
            .ToImmutableHashSet(StringComparer.Ordinal))];
    }

    /// <summary>Compiles a scenario of an algorithm that was checked.</summary>
    /// <exception cref="InputException">The numbers of the scenario make something impossible or too large.</exception>
    public static ScenarioCode Compile(
        AlgorithmSyntax syntax, ScenarioSyntax scenario, MemoryModel model, bool reduces) =>
        new ScenarioCompiler(syntax, scenario, model, reduces).Compile();

    private ScenarioCode Compile()
    {
        ImmutableArray<ThreadCode> threads =
            [.. Enumerable.Range(0, _scenario.Threads.Length).Select(CompileThread)];
        return new()
        {
            Scenario = _scenario.Name,
            Model = _model,
            Memory = _names.Memory,
            Threads = threads,
            Invocations = [.. _invocations],
            Drain = _syntax.Drains.IsEmpty ? null : CompileDrain(_syntax.Drains[0]),
            Expectations = _syntax.Expectations,
            Exists = _syntax.Exists.IsEmpty ? null : _syntax.Exists[0].Value,
            ResultPositions = PositionsOfResults(),
            Names = _names,
            Observed = [.. _syntax.Observed.SelectMany(name => Places(_names.Memory[_names.MemoryOf(name.Text)]))],
            Twins = [.. threads.Select((_, at) => FirstTwin(at))],
        };
    }

    private static IEnumerable<int> Places(SharedMemory memory) =>
        Enumerable.Range(memory.FirstPlace, memory.Length);

    private ThreadCode CompileThread(int thread)
    {
        var syntax = _scenario.Threads[thread];
        var builder = new CodeBuilder();
        var names = ImmutableArray.CreateBuilder<ImmutableArray<string>>();
        var invocations = ImmutableArray.CreateBuilder<Invocation>();
        var entries = new List<int>();
        var firstPoints = new List<int>();
        foreach (var one in syntax.Invocations)
        {
            var operation = Find(one.Operation.Text);
            ImmutableArray<long> arguments = [.. one.Arguments.Select(_names.Evaluator.Value)];
            var invocation = new Invocation(
                _invocations.Count, thread, invocations.Count, operation.Name.Text, operation.Name.Span.Line,
                arguments, ResultCount(operation.Body));
            _invocations.Add(invocation);
            invocations.Add(invocation);
            entries.Add(builder.InstructionCount);
            firstPoints.Add(builder.PointCount);
            names.Add(new OperationCompiler(
                builder, _names, operation, arguments, (kind, order, memory) => IsSilent(thread, kind, order, memory))
                .Compile());
        }

        return Finish(builder, syntax.Name.Text, invocations.ToImmutable(), names.ToImmutable(), entries, firstPoints);
    }

    private ThreadCode CompileDrain(InvocationSyntax drain)
    {
        var builder = new CodeBuilder();
        var operation = Find(drain.Operation.Text);
        ImmutableArray<long> arguments = [.. drain.Arguments.Select(_names.Evaluator.Value)];
        var names = new OperationCompiler(builder, _names, operation, arguments, (_, _, _) => true).Compile();
        var invocation = new Invocation(
            0, 0, 0, operation.Name.Text, operation.Name.Span.Line, arguments, ResultCount(operation.Body));
        return Finish(builder, "drain", [invocation], [names], [0], [0]);
    }

    private static ThreadCode Finish(
        CodeBuilder builder, string name, ImmutableArray<Invocation> invocations,
        ImmutableArray<ImmutableArray<string>> localNames, List<int> entries, List<int> firstPoints)
    {
        builder.Emit(Opcode.End, 0, 0, 0, default);
        var code = builder.Resolve();
        var kinds = new StepPoints(code, builder.PointCount, entries);
        var live = Flow.Live(code, builder.Accesses, builder.Operands);
        var points = new StepPoint[builder.PointCount + 1];
        var liveAt = new uint[points.Length];
        for (int at = 0; at < code.Length; at++)
        {
            if (code[at].Op != Opcode.Point)
                continue;
            int number = code[at].A;
            int order = firstPoints.FindLastIndex(first => first <= number);
            points[number] = new(at + 1, code[at].Line, order, kinds.IsFirst(number), kinds.IsLater(number));
            liveAt[number] = live[at];
        }

        points[^1] = new(code.Length - 1, 0, invocations.Length, true, false);
        return new()
        {
            Name = name,
            Code = code,
            Accesses = [.. builder.Accesses],
            Operands = [.. builder.Operands],
            Registers = builder.InitialRegisters(),
            Points = points,
            Live = liveAt,
            LocalCount = builder.LocalCount,
            LocalNames = localNames,
            Entries = [.. entries],
            Invocations = invocations,
        };
    }

    private bool IsSilent(int thread, AccessKind kind, AccessOrder order, int memory)
    {
        if (kind == AccessKind.Fence)
            return SilenceRules.IsSilentFence(_model, order);
        string name = _names.Memory[memory].Name;
        bool isWrittenByOthers = Enumerable.Range(0, _written.Length)
            .Any(other => other != thread && _written[other].Contains(name));
        return SilenceRules.IsSilentLoad(kind, isWrittenByOthers, _reduces);
    }

    private int FirstTwin(int thread)
    {
        string Text(int of) => string.Join(
            ";", _invocations.Where(one => one.Thread == of).Select(one => one.Text));
        for (int other = 0; other < thread; other++)
        {
            if (Text(other) == Text(thread))
                return other;
        }

        return thread;
    }

    private ImmutableDictionary<string, (int Invocation, int Position)> PositionsOfResults()
    {
        var positions = ImmutableDictionary.CreateBuilder<string, (int, int)>(StringComparer.Ordinal);
        foreach (var invocation in _invocations)
        {
            var operation = Find(invocation.Operation);
            string thread = _scenario.Threads[invocation.Thread].Name.Text;
            foreach (string name in ReturnedNames(operation.Body))
            {
                if (ResultNames.PositionOf(operation, name) is >= 0 and var position)
                    positions[$"{thread}.{name}"] = (invocation.Number, position);
            }
        }

        return positions.ToImmutable();
    }

    private static IEnumerable<string> ReturnedNames(ImmutableArray<Statement> body) =>
        Returns(body).SelectMany(one => one.Values).OfType<Notation.Expressions.NameExpression>()
            .Select(name => name.Name);

    private static int ResultCount(ImmutableArray<Statement> body) =>
        Returns(body).Select(one => one.Values.Length).DefaultIfEmpty(0).Max();

    private static IEnumerable<ReturnStatement> Returns(ImmutableArray<Statement> body) =>
        body.SelectMany(statement => statement switch
        {
            ReturnStatement returning => [returning],
            WhileStatement loop => Returns(loop.Body),
            IfStatement choice => choice.Branches.SelectMany(branch => Returns(branch.Body))
                .Concat(Returns(choice.Otherwise)),
            _ => [],
        });

    private OperationSyntax Find(string name) => _syntax.Operations.First(one => one.Name.Text == name);
}
