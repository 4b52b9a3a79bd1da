using Rookery.Notation;
using Rookery.Programs;

namespace Rookery.Measuring.Plans;

/// <summary>
/// A program worked out beforehand: every task with its actions, so that a measured run only does them.
/// </summary>
/// <remarks>
/// Evaluating a program while it is measured would be measured with it, and an evaluator is for one thread. What a
/// task does
/// depends on its arguments and the seed alone, so it can be known before. 16 bytes an action. Immutable once made.
/// Task 0 is the first; children are numbered in the order in which their tasks are worked out.
/// </remarks>
internal sealed class Plan
{
    private readonly List<PlanStep> _steps = [];
    private readonly List<int> _starts = [];
    private readonly List<string> _labels = [];
    private readonly BoundProgram _program;

    private Plan(BoundProgram program) => _program = program;

    /// <summary>Number of tasks.</summary>
    public int Count => _starts.Count;

    /// <summary>Units of work of all tasks.</summary>
    public Int128 Work { get; private set; }

    /// <summary>Pieces of work of all tasks.</summary>
    public int Pieces { get; private set; }

    /// <summary>Units of waiting of all tasks.</summary>
    public Int128 Blocked { get; private set; }

    /// <summary>What the tasks are called.</summary>
    public IReadOnlyList<string> Labels => _labels;

    /// <summary>The actions of all tasks, one after the other.</summary>
    public PlanStep[] Steps { get; private set; } = [];

    /// <summary>Where each task's actions begin.</summary>
    public int[] Starts { get; private set; } = [];

    /// <summary>Works a program out.</summary>
    /// <param name="program">The program.</param>
    /// <param name="tasksMax">The most tasks.</param>
    /// <param name="stop">Asked now and then.</param>
    /// <exception cref="InputException">It does what has no meaning, or has more tasks.</exception>
    public static Plan Of(BoundProgram program, int tasksMax, CancellationToken stop)
    {
        var plan = new Plan(program);
        TaskEvaluator evaluator = program.CreateEvaluator();
        var open = new Stack<(int Task, int Activation)>();
        plan.NewTask(evaluator, evaluator.Start(), open, tasksMax);
        while (open.TryPop(out var next))
        {
            stop.ThrowIfCancellationRequested();
            plan._starts[next.Task] = plan._steps.Count;
            plan.WorkOut(evaluator, next.Activation, open, tasksMax);
        }

        plan.Steps = [.. plan._steps];
        plan.Starts = [.. plan._starts];
        return plan;
    }

    private void WorkOut(TaskEvaluator evaluator, int activation, Stack<(int Task, int Activation)> open, int tasksMax)
    {
        while (true)
        {
            ActionKind kind = evaluator.Next(activation);
            long value = 0;
            switch (kind)
            {
                case ActionKind.Work:
                    value = evaluator.Units;
                    Work += value;
                    Pieces++;
                    break;
                case ActionKind.Block:
                    value = evaluator.Units;
                    Blocked += value;
                    break;
                case ActionKind.Fork or ActionKind.Call:
                    value = NewTask(evaluator, evaluator.Child, open, tasksMax);
                    break;
            }

            _steps.Add(new(kind, evaluator.Line, value));
            if (kind == ActionKind.End)
                break;
        }

        evaluator.Release(activation);
    }

    private int NewTask(
        TaskEvaluator evaluator, int activation, Stack<(int Task, int Activation)> open, int tasksMax)
    {
        int task = _starts.Count;
        if (task >= tasksMax)
            throw new InputException(MeasuringErrors.TooManyTasks(tasksMax));
        _starts.Add(0);
        _labels.Add(_program.LabelOf(evaluator.DefinitionOf(activation), evaluator.ArgumentsOf(activation)));
        open.Push((task, activation));
        return task;
    }
}
