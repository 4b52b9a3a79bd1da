using System.Collections.Immutable;
using Rookery.Checking;
using Rookery.Checking.Witnesses;

namespace Rookery.Lab.Deques;

/// <summary>An execution that somebody makes by hand: who goes next is chosen, and can be taken back.</summary>
public sealed class HandWalk
{
    private readonly Algorithm _algorithm;
    private readonly string _scenario;
    private readonly MemoryModel _memory;
    private readonly Picture _start;
    private Execution _execution;

    /// <summary>Stands at the beginning.</summary>
    /// <param name="algorithm">The algorithm.</param>
    /// <param name="scenario">One of its scenarios.</param>
    /// <param name="memory">The memory model.</param>
    public HandWalk(Algorithm algorithm, string scenario, MemoryModel memory)
    {
        (_algorithm, _scenario, _memory) = (algorithm, scenario, memory);
        _execution = new(algorithm, scenario, memory);
        _start = _execution.Now;
        Refresh();
    }

    /// <summary>What can come next: the choice, and the step that it would make.</summary>
    public ImmutableArray<(ExecutionChoice Choice, WitnessStep Step)> Choices { get; private set; }

    /// <summary>What has been made so far, standing at its end.</summary>
    public Walk Walk { get; private set; } = null!;

    /// <summary>What is not kept; null as long as all holds.</summary>
    public Property? Broken => _execution.Broken;

    /// <summary>Whether it came to what a litmus test asks for.</summary>
    public bool IsAsked => _execution.IsAsked;

    /// <summary>Whether nothing is left to choose.</summary>
    public bool IsOver => Choices.IsEmpty;

    /// <summary>Whether there is a step to take back.</summary>
    public bool CanUndo => !_execution.Taken.IsEmpty;

    /// <summary>The choices made so far, each a number among those that were possible then.</summary>
    public ImmutableArray<int> Taken => _execution.Taken;

    /// <summary>Makes one of <see cref="Choices"/>; another number does nothing.</summary>
    public void Take(int choice)
    {
        if (choice < 0 || choice >= Choices.Length)
            return;
        _execution.Take(choice);
        Refresh();
    }

    /// <summary>Takes the last step back.</summary>
    public void Undo() => GoBackTo(_execution.Taken.Length - 1);

    /// <summary>Takes all steps back but the first so many.</summary>
    public void GoBackTo(int steps)
    {
        if (steps < 0 || steps >= _execution.Taken.Length)
            return;
        _execution = Execution.Replay(_algorithm, _scenario, _memory, _execution.Taken[..steps]);
        Refresh();
    }

    private void Refresh()
    {
        Choices = [.. _execution.Choices.Select((choice, at) => (choice, _execution.Preview(at)))];
        var witness = new Witness(
            _execution.Threads, _start, _execution.Steps, _execution.Calls, _execution.Finding);
        Walk = new(_algorithm.Source.Text, _memory, witness, _execution.Steps.Length);
    }
}
