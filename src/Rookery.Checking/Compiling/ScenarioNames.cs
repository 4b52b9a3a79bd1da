using System.Collections.Immutable;
using Rookery.Checking.Syntax;
using Rookery.Notation;

namespace Rookery.Checking.Compiling;

/// <summary>What the names of a file stand for in one scenario.</summary>
internal sealed class ScenarioNames
{
    private readonly Dictionary<string, long> _numbers = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _memory = new(StringComparer.Ordinal);
    private readonly string _scenario;

    /// <exception cref="InputException">A constant or a size has no value, or memory is too large.</exception>
    public ScenarioNames(AlgorithmSyntax syntax, ScenarioSyntax scenario)
    {
        _scenario = scenario.Name;
        foreach (var parameter in syntax.Parameters)
            _numbers[parameter.Name.Text] = parameter.Default;
        foreach (var binding in scenario.Bindings)
            _numbers[binding.Name.Text] = binding.Value.Value;
        foreach (var constant in syntax.Constants)
            _numbers[constant.Name.Text] = Evaluator.Value(constant.Value);
        Memory = BuildMemory(syntax);
    }

    public ImmutableArray<SharedMemory> Memory { get; }

    public Evaluator Evaluator => new(name => Number(name.Name), null, _scenario);

    public bool IsShared(string name) => _memory.ContainsKey(name);

    public bool Knows(string name) => _numbers.ContainsKey(name) || IsShared(name);

    public int MemoryOf(string name) => _memory[name];

    /// <summary>A parameter or a constant.</summary>
    public long Number(string name) =>
        _numbers.TryGetValue(name, out long value) ? value : throw new InputException(
            Naming.NameErrors.UnknownName(default, name, "constants see only what is declared above them"));

    private ImmutableArray<SharedMemory> BuildMemory(AlgorithmSyntax syntax)
    {
        var locks = new HashSet<string>(StringComparer.Ordinal);
        foreach (var operation in syntax.Operations)
            CollectLocks(operation.Body, locks);
        var memory = ImmutableArray.CreateBuilder<SharedMemory>();
        long places = 0;
        foreach (var shared in syntax.Shared)
        {
            long size = shared.Size is null ? 1 : Evaluator.Value(shared.Size);
            if (size is < 1 or > AlgorithmLimits.PlacesMax)
                throw new InputException(BindErrors.ArraySize(
                    shared.Name.Span, shared.Name.Text, size, _scenario));
            if (places + size > AlgorithmLimits.PlacesMax)
                throw new InputException(BindErrors.TooManyPlaces(shared.Name.Span, places + size, _scenario));
            long initial = shared.Initial is null ? 0 : Evaluator.Value(shared.Initial);
            bool isLock = locks.Contains(shared.Name.Text);
            _memory.Add(shared.Name.Text, memory.Count);
            memory.Add(new(shared.Name.Text, (int)places, (int)size, shared.Size is not null, initial, isLock));
            places += size;
        }

        return memory.ToImmutable();
    }

    private static void CollectLocks(ImmutableArray<Statement> body, HashSet<string> locks)
    {
        foreach (var statement in body)
        {
            if (statement is LockStatement locking)
                locks.Add(locking.Name.Text);
            if (statement is WhileStatement loop)
                CollectLocks(loop.Body, locks);
            if (statement is not IfStatement choice)
                continue;
            foreach (var branch in choice.Branches)
                CollectLocks(branch.Body, locks);
            CollectLocks(choice.Otherwise, locks);
        }
    }
}
