using System.Collections.Immutable;
using Rookery.Checking.Compiling;
using Rookery.Checking.Exploring;
using Rookery.Checking.Memory;
using Rookery.Checking.States;
using Rookery.Checking.Witnesses;

namespace Rookery.Checking;

/// <summary>One execution of a scenario, made by hand: somebody chooses which step comes next.</summary>
/// <remarks>
/// Mutable. Each step is told as in a <see cref="Witness"/>. Example: of two threads that each write and then read,
/// four steps in any order end the scenario.
/// </remarks>
public sealed class Execution
{
    private const int ListLength = 12;

    private readonly Recorder _recorder;
    private readonly ScenarioCode _code;
    private ImmutableArray<ExecutionChoice> _choices;
    private ImmutableArray<Step> _steps;

    /// <summary>Stands at the beginning of a scenario.</summary>
    /// <param name="algorithm">The algorithm.</param>
    /// <param name="scenario">One of its scenarios.</param>
    /// <param name="memory">The memory model.</param>
    /// <exception cref="ArgumentException">There is no scenario of that name.</exception>
    public Execution(Algorithm algorithm, string scenario, MemoryModel memory)
    {
        var syntax = algorithm.Syntax.Scenarios.FirstOrDefault(one => one.Name == scenario)
            ?? throw new ArgumentException($"There is no scenario '{scenario}'.", nameof(scenario));
        var options = new CheckOptions { Memory = memory, Reduces = false, BufferMax = ListLength };
        _code = ScenarioCompiler.Compile(algorithm.Syntax, syntax, memory, reduces: false);
        int lists = Math.Max(_code.Threads.Length, _code.PlaceCount);
        var machine = new ScenarioMachine(_code, new Capacities(lists, ListLength), options, null);
        machine.Lay(Layout.Wide(machine.Shape));
        _recorder = new(machine);
        Refresh();
    }

    /// <summary>Names of the threads.</summary>
    public ImmutableArray<string> Threads => [.. _code.Threads.Select(thread => thread.Name)];

    /// <summary>What everything holds now.</summary>
    public Picture Now => _recorder.Now;

    /// <summary>The steps made so far.</summary>
    public ImmutableArray<WitnessStep> Steps => _recorder.Steps;

    /// <summary>The operations, thread by thread, as far as they have come.</summary>
    public ImmutableArray<WitnessCall> Calls => _recorder.Calls;

    /// <summary>
    /// What can come next; empty when all threads have ended, nobody can go on, or a step has failed.
    /// </summary>
    public ImmutableArray<ExecutionChoice> Choices => _choices;

    /// <summary>Whether the last step failed: an assertion, an index, a computation without a result.</summary>
    public bool HasFailed => !_recorder.Failure.IsNone;

    /// <summary>Makes one of <see cref="Choices"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such choice.</exception>
    public void Take(int choice)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(choice);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(choice, _choices.Length);
        _recorder.Make(_steps[choice]);
        Refresh();
    }

    private void Refresh()
    {
        _choices = [];
        _steps = [];
        if (HasFailed)
            return;
        _steps = [.. _recorder.Choices().Select(one => one.Step)];
        _choices = [.. _steps.Select(step => new ExecutionChoice(
            step.Thread, step.Kind == StepKind.Drift,
            step.Kind == StepKind.Drift ? 0 : Now.Threads[step.Thread].Line, step.Way))];
    }
}
