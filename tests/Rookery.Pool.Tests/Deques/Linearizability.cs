using Rookery.Pool.Deques;

namespace Rookery.Pool.Tests.Deques;

/// <summary>Whether a history could be one of operations that took effect one after the other.</summary>
/// <remarks>
/// Source: J. M. Wing and C. Gong, "Testing and verifying concurrent objects", JPDC 17 (1993): try each operation
/// that no
/// other precedes as the next one, and go back when the object would not have answered so. Visited pairs of what is
/// done and
/// what the deque holds are remembered (G. Lowe, "Testing for linearizability", 2017).
/// </remarks>
internal static class Linearizability
{
    /// <summary>
    /// Whether it is a history of a deque: bottom in, bottom out, top out; a lost race is no event at all.
    /// </summary>
    public static bool IsDeque(IReadOnlyList<DequeOperation> history)
    {
        DequeOperation[] operations = [.. history.Where(o => o.Outcome != StealOutcome.LostRace).OrderBy(o =>
            o.Invoked)];
        return operations.Length <= 64
            ? Search(operations, 0, [], [])
            : throw new ArgumentException("At most 64 operations.", nameof(history));
    }

    private static bool Search(
        DequeOperation[] operations, ulong done, List<int> deque, HashSet<(ulong Done, string Deque)> visited)
    {
        if (done == (operations.Length == 64 ? ulong.MaxValue : (1UL << operations.Length) - 1))
            return true;
        if (!visited.Add((done, string.Join(',', deque))))
            return false;
        int firstReturn = int.MaxValue;
        for (int i = 0; i < operations.Length; i++)
        {
            if ((done >> i & 1) == 0)
                firstReturn = Math.Min(firstReturn, operations[i].Returned);
        }

        for (int i = 0; i < operations.Length; i++)
        {
            if ((done >> i & 1) == 1 || operations[i].Invoked > firstReturn)
                continue;
            List<int> next = [.. deque];
            if (Apply(operations[i], next) && Search(operations, done | (1UL << i), next, visited))
                return true;
        }

        return false;
    }

    private static bool Apply(DequeOperation operation, List<int> deque)
    {
        if (operation.Action == DequeAction.Push)
        {
            deque.Add(operation.Task);
            return true;
        }

        if (operation.Outcome == StealOutcome.Empty)
            return deque.Count == 0;
        int at = operation.Action == DequeAction.Take ? deque.Count - 1 : 0;
        if (deque.Count == 0 || deque[at] != operation.Task)
            return false;
        deque.RemoveAt(at);
        return true;
    }
}
