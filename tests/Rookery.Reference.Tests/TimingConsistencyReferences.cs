using Rookery.Traces.Measuring;

namespace Rookery.Reference.Tests;

/// <summary>Measured times that no program can have, and times that some program has.</summary>
public sealed class TimingConsistencyReferences
{
    // Cormen, Leiserson, Rivest, Stein, Introduction to Algorithms, 3rd ed. 2009, exercise 27.1-6 (from memory).
    [Fact]
    public void Consistent_TextbookExercise_FindsTheGreedyBoundBrokenAtTenWorkers()
    {
        TimingVerdict verdict = TimingConsistency.Consistent([(4, 80), (10, 42), (64, 10)]);
        Assert.False(verdict.IsConsistent);
        Assert.Equal((320, 10), ((int)verdict.WorkMax, (int)verdict.SpanMax));
        Assert.Equal([(10, 42L)], verdict.Broken);
        Assert.Contains("10 workers take at most", verdict.Reason(), StringComparison.Ordinal);
    }

    [Fact]
    public void Consistent_OneUnitLessAtTenWorkers_IsPossible() =>
        Assert.True(TimingConsistency.Consistent([(4, 80), (10, 41), (64, 10)]).IsConsistent);

    [Fact]
    public void Consistent_GreedyRunsOfAnyProgram_ArePossible() =>
        Testing.ProgramGen.BoundOf(new(TasksMax: 200, ActionsMax: 2_000, WithBlock: false)).Sample(
            program => TimingConsistency.Consistent(
                [.. new[] { 1, 2, 3, 5, 9 }.Select(p => (p, Runs.Of(program, Runs.Settings(p, "greedy")).Makespan))])
                .IsConsistent,
            iter: 300);
}
