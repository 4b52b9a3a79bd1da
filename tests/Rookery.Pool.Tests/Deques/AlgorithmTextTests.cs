using Rookery.Pool.Deques;

namespace Rookery.Pool.Tests.Deques;

/// <summary>
/// Ties the pool's deque to the algorithm that the checker verifies: the same steps in the same order.
/// </summary>
public sealed class AlgorithmTextTests
{
    private static readonly (DequeStep Step, string Line)[] s_push =
    [
        (DequeStep.PushReadBottom, "let b = bottom"), (DequeStep.PushReadTop, "let t = top acquire"),
        (DequeStep.PushWriteItem, "near[b % small] = x"), (DequeStep.PushFence, "fence release # F1"),
        (DequeStep.PushWriteBottom, "bottom = b + 1"),
    ];

    private static readonly (DequeStep Step, string Line)[] s_take =
    [
        (DequeStep.TakeReadBottom, "let b = bottom - 1"), (DequeStep.TakeWriteBottom, "bottom = b"),
        (DequeStep.TakeFence, "fence # F2"), (DequeStep.TakeReadTop, "let t = top"),
        (DequeStep.TakeReadItem, "let x = near[b % small]"),
    ];

    private static readonly (DequeStep Step, string Line)[] s_steal =
    [
        (DequeStep.StealReadTop, "let t = top acquire"), (DequeStep.StealFence, "fence # F3"),
        (DequeStep.StealReadBottom, "let b = bottom acquire"), (DequeStep.StealReadArray, "let n = length acquire"),
        (DequeStep.StealReadItem, "let x = near[t % small]"), (DequeStep.StealContest, "cas(top, t, t + 1)"),
    ];

    [Fact]
    public void Steps_OfTheCheckedAlgorithm_AreThoseOfTheCode()
    {
        string[] text = [.. File.ReadLines(AlgorithmPath()).Select(line => string.Join(' ', line.Split(' ',
            StringSplitOptions.RemoveEmptyEntries)))];
        var deque = new LockFreeDeque<RecordedSteps>(FencePlacement.Owner);
        Compare(text, "push", s_push, RecordedSteps.Of(() => deque.Push(1)));
        deque.Push(2);
        deque.Push(3);
        Compare(text, "pop", s_take, RecordedSteps.Of(() => deque.TakeNewest()));
        Compare(text, "steal", s_steal, RecordedSteps.Of(() => deque.TrySteal(out _)));
    }

    private static void Compare(
        string[] text, string operation, (DequeStep Step, string Line)[] wanted, DequeStep[] taken)
    {
        Assert.Equal(wanted.Select(step => step.Step), taken);
        int at = Array.FindIndex(text, line => line.StartsWith($"operation {operation}(", StringComparison.Ordinal));
        foreach ((DequeStep step, string line) in wanted)
        {
            int found = Array.FindIndex(
                text, at + 1, it => it == line || (line.StartsWith("cas", StringComparison.Ordinal) && it.Contains(
                    line, StringComparison.Ordinal)));
            Assert.True(found > at, $"{operation}: '{line}' ({step}) does not follow line {at + 1} of the algorithm.");
            at = found;
        }
    }

    private static string AlgorithmPath()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "Rookery.slnx")))
            folder = Path.GetDirectoryName(folder);
        return Path.Combine(folder!, "lessons", "deques", "growable-weak.dq");
    }
}
