using Rookery.Checking.Compiling;
using Rookery.Checking.Exploring;
using Rookery.Checking.Memory;
using Rookery.Checking.Progress;
using Rookery.Checking.States;
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
    public static CheckResult Check(Algorithm algorithm, string scenario, CheckOptions options)
    {
        var syntax = algorithm.Syntax.Scenarios.FirstOrDefault(one => one.Name == scenario)
            ?? throw new ArgumentException($"There is no scenario '{scenario}'.", nameof(scenario));
        var code = ScenarioCompiler.Compile(algorithm.Syntax, syntax, options.Memory, options.Reduces);
        var (search, isEndless) = Explore(code, options);
        return ResultOf(algorithm, code, search, isEndless, options);
    }

    /// <summary>Searches; begins again with wider states as long as a number does not fit.</summary>
    internal static (Search Search, bool IsEndless) Explore(
        ScenarioCode code, CheckOptions options, bool keepsThreadsApart = false)
    {
        var machine = Warmup.Learn(code, options);
        while (true)
        {
            var search = new Search(machine, options, keepsThreadsApart);
            try
            {
                search.Run();
                return (search, false);
            }
            catch (LayoutOverflowException narrow)
            {
                machine.Shape.WidenFamily(narrow.Slot, narrow.Value);
                machine.Lay(Layout.Packed(machine.Shape));
            }
            catch (CapacityOverflowException full)
            {
                var capacities = Warmup.CapacitiesOf(machine);
                if (capacities[full.List] >= Capacities.Max)
                    return (search, true);
                capacities[full.List]++;
                machine = new(code, capacities, options, machine.Shape);
                machine.Lay(Layout.Packed(machine.Shape));
            }
        }
    }

    private static CheckResult ResultOf(
        Algorithm algorithm, ScenarioCode code, Search search, bool isEndless, CheckOptions options)
    {
        Budget? exhausted = isEndless ? Budget.Writes : search.Exhausted;
        Verdict verdict = search.Violation is not null ? Verdict.Broken
            : search.Asked is not null ? Verdict.Allowed
            : exhausted is not null ? Verdict.OutOfBudget
            : code.Exists is not null ? Verdict.Forbidden
            : Verdict.Holds;
        var builder = new WitnessBuilder(search);
        return new()
        {
            Algorithm = algorithm.Name,
            Scenario = code.Scenario,
            Memory = code.Model,
            Verdict = verdict,
            Property = search.Violation?.Property,
            Exhausted = exhausted,
            States = search.States,
            Transitions = search.Transitions,
            Depth = search.Depth,
            Frontier = exhausted is null ? 0 : search.Frontier,
            StateBytes = search.Machine.Layout.Words * sizeof(ulong),
            Bytes = search.Bytes,
            Outcomes = OutcomeText.All(code, search),
            Witness = search.Violation is not null ? builder.Of(search.Violation)
                : search.Asked is { } asked ? builder.OfAsked(asked) : null,
            Progress = options.ClassifiesProgress && code.Exists is null
                ? new ProgressClassifier(algorithm.Syntax, code.Scenario, options).Classify() : [],
        };
    }
}
