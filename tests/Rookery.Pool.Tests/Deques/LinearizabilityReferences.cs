using Rookery.Pool.Deques;

namespace Rookery.Pool.Tests.Deques;

/// <summary>
/// The checker itself, on the queue histories of Herlihy and Wing, TOPLAS 1990, figure 1 (from memory).
/// </summary>
public sealed class LinearizabilityReferences
{
    // Enqueue is a push, dequeue a steal: bottom in, top out.
    [Fact]
    public void Q1_WithOverlappingEnqueues_IsLinearizable() => Assert.True(Linearizability.IsDeque(
        [Push(0, 0, 2), Push(1, 1, 3), Steal(0, 4, 5), Steal(1, 6, 7)]));

    [Fact]
    public void Q2_WithTheSecondOutFirst_IsNot() => Assert.False(Linearizability.IsDeque(
        [Push(0, 0, 1), Push(1, 2, 3), Steal(1, 4, 5)]));

    [Fact]
    public void Q4_WithOneTwice_IsNot() => Assert.False(Linearizability.IsDeque(
        [Push(0, 0, 2), Push(1, 1, 3), Steal(1, 4, 6), Steal(1, 5, 7)]));

    private static DequeOperation Push(int task, int from, int to) =>
        new(DequeAction.Push, StealOutcome.Taken, task, from, to);

    private static DequeOperation Steal(int task, int from, int to) =>
        new(DequeAction.Steal, StealOutcome.Taken, task, from, to);
}
