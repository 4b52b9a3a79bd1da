using System.Collections.Immutable;
using Rookery.Checking.Compiling;
using Rookery.Checking.Exploring;
using Rookery.Checking.Naming;
using Rookery.Checking.Syntax;

namespace Rookery.Checking.Progress;

/// <summary>Says of each operation how far other threads can hold it up, within one scenario.</summary>
/// <remarks>
/// Classes as in Herlihy and Shavit, "The Art of Multiprocessor Programming" (2008), section 3.7. A scenario is finite,
/// so that "for ever" is read off from what repeats:
/// <list type="bullet">
/// <item>Blocking: from some reachable state the operation's thread, running alone, cannot end it.</item>
/// <item>Obstruction-free only: the state graph has a circle in which the thread moves; no operation ends in it.</item>
/// <item>Lock-free only: the thread comes back to a line with the same values of its own, though alone it would have
/// ended without, so others made it; as there is no circle, they did so by getting on themselves. With enough
/// operations of theirs it can go on for ever.</item>
/// <item>Wait-free: nothing of that; an operation without loops and locks is so at once.</item>
/// </list>
/// </remarks>
internal sealed class ProgressClassifier(AlgorithmSyntax syntax, string scenario, CheckOptions options)
{
    private const long StatesMost = 1_000_000;

    /// <summary>
    /// The class of each operation that the scenario runs, in the order of the file; there when all is done.
    /// </summary>
    public ImmutableArray<OperationProgress> Classes { get; private set; } = [];

    /// <summary>Classifies.</summary>
    public IEnumerable<Portion> Work()
    {
        var plain = syntax with { Expectations = [] };
        var code = ScenarioCompiler.Compile(
            plain, plain.Scenarios.First(one => one.Name == scenario), options.Memory, reduces: true);
        var simple = code.Invocations.Where(one => IsSimple(code, one)).ToHashSet();
        StateGraph? graph = null;
        if (simple.Count < code.Invocations.Length)
        {

            // Local steps could go round in place of others, and what goes round is what is asked.
            var limited = options with
            {
                StatesMax = Math.Min(options.StatesMax, StatesMost),
                Reductions = Reductions.All & ~Reductions.Local,
            };
            var exploration = new Exploration(code, limited, keepsThreadsApart: true);
            foreach (Portion portion in exploration.Work())
                yield return portion;
            graph = exploration is { IsEndless: false, Search: { Exhausted: null } search } ? new(search) : null;
        }

        foreach (Portion portion in graph?.Work() ?? [])
            yield return portion;
        CircleFinder? circles = graph is null ? null : new(graph);
        yield return Portion.Rest;
        var classes = new Dictionary<Invocation, OperationProgress>();
        foreach (Invocation call in code.Invocations)
        {
            classes[call] = ClassOf(call, simple, circles, code);
            yield return Portion.Rest;
        }

        Classes =
        [
            .. syntax.Operations.Where(operation => code.Invocations.Any(one => one.Operation == operation.Name.Text))
                .Select(operation => code.Invocations.Where(one => one.Operation == operation.Name.Text)
                    .Select(call => classes[call]).MaxBy(one => one.Class)!),
        ];
    }

    private static OperationProgress ClassOf(
        Invocation call, HashSet<Invocation> simple, CircleFinder? circles, ScenarioCode code) =>
        simple.Contains(call)
            ? Bounded(code, call)
            : circles?.ClassOf(call) ?? new(
                call.Operation, ProgressClass.Unknown, new(ProgressReasonKind.NotSearched));

    private static OperationProgress Bounded(ScenarioCode code, Invocation call)
    {
        var points = code.Threads[call.Thread].Points;
        int accesses = points.Count(point => point.Line > 0 && point.Invocation == call.Order);
        return new(
            call.Operation, ProgressClass.WaitFree, new(ProgressReasonKind.Bounded) { StepsMax = accesses });
    }

    /// <summary>Whether an operation has neither loops nor locks.</summary>
    private static bool IsSimple(ScenarioCode code, Invocation call)
    {
        ThreadCode thread = code.Threads[call.Thread];
        int from = thread.Entries[call.Order];
        int to = call.Order + 1 < thread.Entries.Length ? thread.Entries[call.Order + 1] : thread.Code.Length;
        for (int at = from; at < to; at++)
        {
            Instruction one = thread.Code[at];
            bool isJump = one.Op is Opcode.Jump or Opcode.JumpZero or Opcode.JumpNotZero;
            bool isLock = one.Op == Opcode.Access && thread.Accesses[one.A].Kind == AccessKind.Lock;
            if (isLock || (isJump && one.A <= at))
                return false;
        }

        return true;
    }
}
