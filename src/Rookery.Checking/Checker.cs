using System.Collections.Immutable;
using Rookery.Checking.Compiling;
using Rookery.Checking.Exploring;
using Rookery.Checking.Witnesses;

namespace Rookery.Checking;

/// <summary>
/// Checks a scenario of an algorithm under a memory model: every interleaving, every choice of memory.
/// </summary>
public static class Checker
{
    /// <summary>Checks one scenario.</summary>
    /// <param name="algorithm">The algorithm.</param>
    /// <param name="scenario">The scenario's name, one of <see cref="Algorithm.Scenarios"/>.</param>
    /// <param name="options">Memory model, reductions, limits.</param>
    /// <exception cref="ArgumentException">There is no scenario of that name.</exception>
    /// <exception cref="Notation.InputException">The condition of a litmus test has no value.</exception>
    public static CheckResult Check(Algorithm algorithm, string scenario, CheckOptions options) =>
        new CheckRun(algorithm, scenario, options).Complete();

    internal static CheckResult ResultOf(
        Algorithm algorithm, ScenarioCode code, Exploration exploration, ImmutableArray<OperationProgress> progress)
    {
        Search search = exploration.Search!;
        Budget? exhausted = exploration.IsEndless ? Budget.Writes : search.Exhausted;
        Search told = exploration.Shortest!;
        Verdict verdict = search.Violation is not null ? Verdict.Broken
            : search.Asked is not null ? Verdict.Allowed
            : exhausted is not null ? Verdict.OutOfBudget
            : code.Exists is not null ? Verdict.Forbidden
            : Verdict.Holds;
        var builder = new WitnessBuilder(told);
        return new()
        {
            Algorithm = algorithm.Name,
            Scenario = code.Scenario,
            Memory = code.Model,
            Verdict = verdict,
            Property = told.Violation?.Property,
            Exhausted = exhausted,
            States = search.States,
            Transitions = search.Transitions,
            Depth = search.Depth,
            Frontier = exhausted is null ? 0 : search.Frontier,
            StateBytes = search.Machine.Layout.Words * sizeof(ulong),
            Bytes = search.Bytes,
            Outcomes = OutcomeText.All(code, search),
            Witness = told.Violation is not null ? builder.Of(told.Violation)
                : told.Asked is { } asked ? builder.OfAsked(asked) : null,
            Progress = progress,
        };
    }
}
