namespace Rookery.Checking.Progress;

/// <summary>Finds the parts of a graph in which every state can be reached from every other (Tarjan 1972).</summary>
/// <remarks>With a stack of its own in place of recursion: the graph may be deep.</remarks>
internal static class Components
{
    /// <summary>For each state the number of its part.</summary>
    public static int[] Of(StateGraph graph)
    {
        int[] part = new int[graph.Count], index = new int[graph.Count], low = new int[graph.Count];
        Array.Fill(part, -1);
        var open = new Stack<int>();
        var path = new Stack<(int State, int Edge)>();
        int nextIndex = 1, nextPart = 0;
        for (int root = 0; root < graph.Count; root++)
        {
            if (index[root] != 0)
                continue;
            path.Push((root, 0));
            while (path.Count > 0)
            {
                var (state, edge) = path.Pop();
                if (edge == 0)
                {
                    index[state] = low[state] = nextIndex++;
                    open.Push(state);
                }

                var edges = graph.From(state);
                if (edge > 0)
                    low[state] = Math.Min(low[state], low[edges[edge - 1].To]);
                while (edge < edges.Length && index[edges[edge].To] != 0)
                {
                    int to = edges[edge++].To;
                    if (part[to] < 0)
                        low[state] = Math.Min(low[state], index[to]);
                }

                if (edge < edges.Length)
                {
                    path.Push((state, edge + 1));
                    path.Push((edges[edge].To, 0));
                    continue;
                }

                if (low[state] != index[state])
                    continue;
                int member;
                do
                {
                    member = open.Pop();
                    part[member] = nextPart;
                    low[member] = int.MaxValue;
                }
                while (member != state);
                nextPart++;
            }
        }

        return part;
    }
}
