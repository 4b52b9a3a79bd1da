using Rookery.Programs;

namespace Rookery.Testing;

/// <summary>Runs a program on one worker, children at once where they are forked, and counts.</summary>
/// <remarks>
/// Written without the analysis and simpler than it: one visit for every task, span by the definition. So it is what
/// the analysis and the simulator are compared with.
/// </remarks>
public sealed class SerialRun
{
    private readonly TaskEvaluator _evaluator;
    private readonly BoundProgram _program;
    private readonly List<string> _log = [];

    private SerialRun(BoundProgram program)
    {
        _program = program;
        _evaluator = program.CreateEvaluator();
    }

    /// <summary>Tasks begun.</summary>
    public long Tasks { get; private set; }

    /// <summary>Tasks forked.</summary>
    public long Forks { get; private set; }

    /// <summary>Units of work of all tasks.</summary>
    public long Work { get; private set; }

    /// <summary>Longest path through the task graph, waiting included.</summary>
    public long Span { get; private set; }

    /// <summary>Most tasks inside one another.</summary>
    public long Deepest { get; private set; }

    /// <summary>Actions of all tasks.</summary>
    public long Actions { get; private set; }

    /// <summary>All actions in order, one line each, when asked for.</summary>
    public IReadOnlyList<string> Log => _log;

    /// <summary>Runs a program to its end.</summary>
    /// <param name="program">The program.</param>
    /// <param name="withLog">Whether to keep <see cref="Log"/>.</param>
    public static SerialRun Of(BoundProgram program, bool withLog = false)
    {
        var run = new SerialRun(program);
        run.Go(withLog);
        return run;
    }

    private void Go(bool withLog)
    {
        var stack = new Stack<Frame>();
        stack.Push(new(_evaluator.Start(), 1, false));
        Tasks = 1;
        Deepest = 1;
        while (stack.TryPeek(out var frame))
        {
            var kind = _evaluator.Next(frame.Activation);
            Actions++;
            if (withLog)
                _log.Add(Describe(frame, kind));
            switch (kind)
            {
                case ActionKind.Work:
                    Work += _evaluator.Units;
                    frame.Strand += _evaluator.Units;
                    break;
                case ActionKind.Block:
                    frame.Strand += _evaluator.Units;
                    break;
                case ActionKind.Fork or ActionKind.Call:
                    Tasks++;
                    Forks += kind == ActionKind.Fork ? 1 : 0;
                    stack.Push(new(_evaluator.Child, frame.Depth + 1, kind == ActionKind.Fork));
                    Deepest = Math.Max(Deepest, frame.Depth + 1);
                    break;
                case ActionKind.Join:
                    frame.Join();
                    break;
                default:
                    frame.Join();
                    _evaluator.Release(frame.Activation);
                    stack.Pop();
                    Return(frame, stack);
                    break;
            }
        }
    }

    private void Return(Frame child, Stack<Frame> stack)
    {
        if (!stack.TryPeek(out var parent))
            Span = child.Strand;
        else if (child.IsForked)
            parent.LongestChild = Math.Max(parent.LongestChild, parent.Strand + child.Strand);
        else
            parent.Strand += child.Strand;
    }

    private string Describe(Frame frame, ActionKind kind)
    {
        string label = Label(frame.Activation);
        string what = kind switch
        {
            ActionKind.Work or ActionKind.Block => FormattableString.Invariant($" {_evaluator.Units}"),
            ActionKind.Fork or ActionKind.Call => " " + Label(_evaluator.Child),
            _ => "",
        };
        return FormattableString.Invariant($"{_evaluator.Line}: {label} {kind}{what}");
    }

    private string Label(int activation) =>
        _program.LabelOf(_evaluator.DefinitionOf(activation), _evaluator.ArgumentsOf(activation));

    private sealed class Frame(int activation, int depth, bool isForked)
    {
        public int Activation { get; } = activation;

        public int Depth { get; } = depth;

        public bool IsForked { get; } = isForked;

        public long Strand { get; set; }

        public long LongestChild { get; set; }

        public void Join()
        {
            Strand = Math.Max(Strand, LongestChild);
            LongestChild = 0;
        }
    }
}
