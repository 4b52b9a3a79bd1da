using Rookery.Programs;

namespace Rookery.Reference.Tests;

/// <summary>A small program's strands and what must come before what, unrolled in the plainest way.</summary>
internal sealed class StrandGraph
{
    private readonly TaskEvaluator _evaluator;

    private StrandGraph(TaskEvaluator evaluator) => _evaluator = evaluator;

    /// <summary>Units of work of each strand.</summary>
    public List<long> Lengths { get; } = [];

    /// <summary>Pairs: the first must have ended before the second starts.</summary>
    public List<(int Before, int After)> Edges { get; } = [];

    public static StrandGraph Of(BoundProgram program)
    {
        var graph = new StrandGraph(program.CreateEvaluator());
        graph.Visit(graph._evaluator.Start(), []);
        return graph;
    }

    // Takes the strands that the task comes after, gives the strands that what follows it comes after.
    private List<int> Visit(int activation, List<int> after)
    {
        var forked = new List<int>();
        while (true)
        {
            ActionKind action = _evaluator.Next(activation);
            switch (action)
            {
                case ActionKind.Work:
                    Lengths.Add(_evaluator.Units);
                    int strand = Lengths.Count - 1;
                    Edges.AddRange(after.Select(before => (before, strand)));
                    after = [strand];
                    break;
                case ActionKind.Fork:
                    forked.AddRange(Visit(_evaluator.Child, after));
                    break;
                case ActionKind.Call:
                    after = Visit(_evaluator.Child, after);
                    break;
                case ActionKind.Join:
                    after = [.. after.Concat(forked).Distinct()];
                    forked.Clear();
                    break;
                case ActionKind.Block:
                    throw new InvalidOperationException("These programs do not wait outside the processor.");
                case ActionKind.End:
                    _evaluator.Release(activation);
                    return [.. after.Concat(forked).Distinct()];
            }
        }
    }
}
