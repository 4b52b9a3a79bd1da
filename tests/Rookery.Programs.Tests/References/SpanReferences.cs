using QuikGraph;
using QuikGraph.Algorithms;
using Rookery.Testing;

namespace Rookery.Programs.Tests.References;

/// <summary>The span against the longest path that a graph library finds in the unrolled task graph.</summary>
public sealed class SpanReferences
{
    [Fact]
    public void Span_RandomPrograms_IsTheLongestPathOfQuikGraph() =>
        ProgramGen.Bound.Sample(
            program =>
            {
                var analysis = ProgramAnalysis.Analyse(program);
                var (graph, work) = Unroll(program);
                Assert.Equal((analysis.Span, analysis.Work), (LongestPath(graph), work));
            },
            iter: 300);

    // The dag of figure 27.2 without its weights: 20 edges for n = 4, 35 for n = 5 (derived for the others).
    [Theory]
    [InlineData(2, 5)]
    [InlineData(3, 10)]
    [InlineData(4, 20)]
    [InlineData(5, 35)]
    [InlineData(6, 60)]
    public void Graph_OfFibonacci_HasTheEdgesOfTheTextbook(int n, int edges)
    {
        var program = Fj.Bind(
            $"""
            task fib(n)
                if n < 2
                    work 1
                else
                    work 1
                    fork fib(n - 1)
                    work 1
                    call fib(n - 2)
                    join
                    work 1
            start fib({n})
            """);
        var (graph, _) = Unroll(program);

        // A strand of work is an edge here and a vertex there: so count the pairs of strands that follow one another.
        Assert.Equal(edges, StrandPairs(graph));
    }

    private static (AdjacencyGraph<int, TaggedEdge<int, long>> Graph, long Work) Unroll(BoundProgram program)
    {
        var unroller = new Unroller(program.CreateEvaluator());
        unroller.Run();
        return (unroller.Graph, unroller.Work);
    }

    private static long LongestPath(AdjacencyGraph<int, TaggedEdge<int, long>> graph)
    {
        var longest = new Dictionary<int, long>();
        long span = 0;
        foreach (int vertex in graph.TopologicalSort())
        {
            long here = longest.GetValueOrDefault(vertex);
            span = Math.Max(span, here);
            foreach (var edge in graph.OutEdges(vertex))
                longest[edge.Target] = Math.Max(longest.GetValueOrDefault(edge.Target), here + edge.Tag);
        }

        return span;
    }

    /// <summary>Pairs of edges with weight where the second can be reached from the first over edges without.</summary>
    private static int StrandPairs(AdjacencyGraph<int, TaggedEdge<int, long>> graph)
    {
        int pairs = 0;
        foreach (var strand in graph.Edges.Where(edge => edge.Tag > 0))
        {
            var open = new Stack<int>([strand.Target]);
            var seen = new HashSet<int>();
            while (open.TryPop(out int vertex))
            {
                if (!seen.Add(vertex))
                    continue;
                foreach (var edge in graph.OutEdges(vertex))
                {
                    if (edge.Tag > 0)
                        pairs++;
                    else
                        open.Push(edge.Target);
                }
            }
        }

        return pairs;
    }

    /// <summary>
    /// Runs a program and draws its graph: a vertex for each moment of a task, an edge for what lies between.
    /// </summary>
    private sealed class Unroller(TaskEvaluator evaluator)
    {
        private int _vertices;

        public AdjacencyGraph<int, TaggedEdge<int, long>> Graph { get; } = new();

        public long Work { get; private set; }

        public void Run() => Visit(evaluator.Start(), NewVertex());

        /// <summary>Draws a task from a vertex on; gives the vertex where it has ended.</summary>
        private int Visit(int activation, int at)
        {
            var forked = new List<int>();
            while (true)
            {
                var kind = evaluator.Next(activation);
                switch (kind)
                {
                    case ActionKind.Work or ActionKind.Block:
                        Work += kind == ActionKind.Work ? evaluator.Units : 0;
                        at = Connect(at, NewVertex(), evaluator.Units);
                        break;
                    case ActionKind.Fork:
                        forked.Add(Visit(evaluator.Child, Connect(at, NewVertex(), 0)));
                        break;
                    case ActionKind.Call:
                        at = Visit(evaluator.Child, at);
                        break;
                    default:
                        int joined = NewVertex();
                        Connect(at, joined, 0);
                        foreach (int child in forked)
                            Connect(child, joined, 0);
                        forked.Clear();
                        at = joined;
                        if (kind != ActionKind.End)
                            break;
                        evaluator.Release(activation);
                        return at;
                }
            }
        }

        private int Connect(int from, int to, long units)
        {
            Graph.AddEdge(new(from, to, units));
            return to;
        }

        private int NewVertex()
        {
            Graph.AddVertex(_vertices);
            return _vertices++;
        }
    }
}
