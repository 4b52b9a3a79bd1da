using Rookery.Checking.Properties;

namespace Rookery.Checking.Tests.References;

/// <summary>
/// Histories of a queue: Q1 and Q2 follow the text of M. Herlihy, J. Wing, "Linearizability: A Correctness Condition
/// for Concurrent Objects", ACM TOPLAS 12(3), 1990, figure 1 (from memory); Q3 and Q4 are of the same kind. The
/// verdicts were computed with a checker that is no part of this one.
/// </summary>
public sealed class LinearizabilityReferences
{
    private const int Pending = 99;

    /// <summary>Each call: thread, e for putting in or d for taking out, value, begin, end.</summary>
    public static TheoryData<string, string, bool> Histories { get; } = new()
    {
        { "Q1", "A e 1 0 2; B e 2 1 3; B d 1 4 5; A d 2 6 7; A e 3 8 99", true },
        { "Q2", "A e 1 0 1; B e 2 2 3; A d 2 4 5", false },
        { "Q3", "A e 1 0 99; B d 1 1 2", true },
        { "Q4", "A e 1 0 2; B e 2 1 3; A d 2 4 6; B d 2 5 7", false },
    };

    [Theory]
    [MemberData(nameof(Histories))]
    public void IsLinearizable_PublishedHistory_AsPublished(string name, string history, bool expected)
    {
        var calls = history.Split(';', StringSplitOptions.TrimEntries).Select(one => one.Split(' ')).Select(one => (
            Thread: one[0][0] - 'A', IsPut: one[1] == "e", Value: Number(one[2]), Begin: Number(one[3]),
            End: Number(one[4]))).ToArray();
        LinearizableCall[] made =
        [
            .. calls.Select(call => new LinearizableCall(
                call.IsPut ? CallRole.PutBottom : CallRole.TakeTop, call.Thread,
                calls.Count(other => other.Thread == call.Thread && other.Begin < call.Begin), call.End != Pending,
                call.Value, call.IsPut ? null : call.Value, false, false, false,
                [EndedBefore(0, call.Begin), EndedBefore(1, call.Begin)])),
        ];
        Assert.True(expected == Linearizer.IsLinearizable(made), name);

        int Number(string text) => int.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
        long EndedBefore(int thread, int begin) => calls.Count(one => one.Thread == thread && one.End < begin);
    }
}
