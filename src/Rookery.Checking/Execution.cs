using System.Collections.Immutable;
using Rookery.Checking.Compiling;
using Rookery.Checking.Exploring;
using Rookery.Checking.Memory;
using Rookery.Checking.Properties;
using Rookery.Checking.States;
using Rookery.Checking.Witnesses;

namespace Rookery.Checking;

/// <summary>One execution of a scenario, made by hand: somebody chooses which step comes next.</summary>
/// <remarks>
/// Mutable. Each step is noted as in a <see cref="Witness"/>. Example: of two threads that each write and then read,
/// four steps in any order end the scenario.
/// </remarks>
public sealed class Execution
{
    private const int ListLength = 12;

    private readonly Recorder _recorder;
    private readonly ScenarioCode _code;
    private readonly ScenarioMachine _machine;
    private readonly PropertyChecker _properties;
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
        var options = new CheckOptions { Memory = memory, Reductions = Reductions.None, BufferMax = ListLength };
        _code = ScenarioCompiler.Compile(algorithm.Syntax, syntax, memory, reduces: false);
        int lists = Math.Max(_code.Threads.Length, _code.PlaceCount);
        _machine = new ScenarioMachine(_code, new Capacities(lists, ListLength), options, null);
        _machine.Lay(Layout.Wide(_machine.Shape));
        (_recorder, _properties) = (new(_machine), new(_machine));
        Refresh();
    }

    /// <summary>An execution in which the same choices were made, for going back some steps.</summary>
    /// <param name="algorithm">The algorithm.</param>
    /// <param name="scenario">One of its scenarios.</param>
    /// <param name="memory">The memory model.</param>
    /// <param name="taken">The choices, as in <see cref="Taken"/>.</param>
    /// <exception cref="ArgumentException">There is no scenario of that name, or no such choice.</exception>
    public static Execution Replay(
        Algorithm algorithm, string scenario, MemoryModel memory, ImmutableArray<int> taken)
    {
        var execution = new Execution(algorithm, scenario, memory);
        foreach (int choice in taken)
            execution.Take(choice);
        return execution;
    }

    /// <summary>The choices made so far, each a number among those that were possible then.</summary>
    public ImmutableArray<int> Taken { get; private set; } = [];

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

    /// <summary>The step that one of <see cref="Choices"/> would make, noted as if it had been made.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such choice.</exception>
    public WitnessStep Preview(int choice)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(choice);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(choice, _choices.Length);
        return _recorder.Preview(_steps[choice]);
    }

    /// <summary>What the execution has failed to keep, the first of it; null as long as all holds.</summary>
    /// <remarks>
    /// Seen as soon as a search would see it: when an operation returns, when nobody can go on, or when all threads
    /// have ended.
    /// </remarks>
    public Property? Broken { get; private set; }

    /// <summary>
    /// What fails, or that the execution is what a litmus test asks for; null as long as neither is.
    /// </summary>
    public Finding? Finding { get; private set; }

    /// <summary>Whether all threads have ended in what a litmus test asks for.</summary>
    public bool IsAsked { get; private set; }

    /// <summary>Makes one of <see cref="Choices"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such choice.</exception>
    public void Take(int choice)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(choice);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(choice, _choices.Length);
        _recorder.Make(_steps[choice]);
        Taken = Taken.Add(choice);
        Refresh();
    }

    private void Refresh()
    {
        _steps = HasFailed ? [] : [.. _recorder.Choices().Select(one => one.Step)];
        _choices = [.. _steps.Select(step => new ExecutionChoice(
            step.Thread, step.Kind == StepKind.Drift,
            step.Kind == StepKind.Drift ? 0 : Now.Threads[step.Thread].Line, step.Way))];
        if (Broken is null)
            Judge();
    }

    private void Judge()
    {
        bool isOver = _steps.IsEmpty;
        bool hasEnded = Enumerable.Range(0, _code.Threads.Length).All(
            thread => _machine.HasEnded(_recorder.State, thread));
        if (HasFailed)
            Broken = PropertyChecker.PropertyOf(_recorder.Failure.Kind);
        else if (_recorder.HasReturned && _properties.AfterReturn(_recorder.State) is { } property)
            Broken = property;
        else if (isOver)
            Broken = hasEnded ? _properties.AtEnd(_recorder.State) : Property.NoDeadlock;
        IsAsked = Broken is null && isOver && _code.Exists is not null && _properties.Exists(_recorder.State);
        if (IsAsked)
            Finding = FindingMaker.Asked;
        else if (Broken is { } broken)
            Finding = new FindingMaker(_machine).Of(
                broken, _recorder.Failure, isOver && hasEnded && !HasFailed, _recorder);
    }
}
