using System.Globalization;
using Rookery.Checking.Tests.Naive;
using Rookery.Checking.Tests.Shipped;

namespace Rookery.Checking.Tests.Spin;

/// <summary>
/// The same models given to Spin 6.5 (G. J. Holzmann, "The Spin Model Checker", 2003), Debian's package.
/// </summary>
public sealed class SpinReferences
{
    public static TheoryData<string, string> Scenarios { get; } = new()
    {
        { "growable.dq", "one owner, one thief" },
        { "growable.dq", "one owner, two thieves" },
        { "tagged-top.dq", "back to the start" },
        { "thief-lock.dq", "one owner, two thieves" },
        { "idempotent.dq", "one owner, two thieves" },
        { "broken/growable-last-item-not-contested.dq", "one owner, one thief" },
        { "broken/tagged-top-no-tag.dq", "back to the start" },
        { "broken/two-locks-wrong-order.dq", "one owner, one thief" },
    };

    [Theory]
    [MemberData(nameof(Scenarios))]
    public void Check_SequentialWithoutReductions_CountsAndAnswersAsSpin(string file, string scenario)
    {
        string text = ShippedFiles.WithExpectation(ShippedFiles.Read(file), "expect none twice");
        var code = new PlainCode(text, scenario);
        var found = Checker.Check(
            AlgorithmReader.Read(file, text).OrThrow(), scenario, new() { Reductions = Reductions.None });

        var counted = SpinRun.Of(new PromelaWriter(code).Write(claimsOnce: false));
        var claimed = SpinRun.Of(new PromelaWriter(code).Write(claimsOnce: true));
        if (found.Property != Property.NoDeadlock)
        {
            // Spin counts one state more: the one before it has set the threads to their first accesses.
            Assert.Equal(counted.States - 1, found.States);
            Assert.Equal(counted.Transitions - 2, found.Transitions);
        }

        Assert.Equal(claimed.HasError, found.Property == Property.NothingTwice);
    }

    [Fact]
    public void Check_RandomAlgorithms_CountAsSpin()
    {
        foreach (ulong seed in new ulong[] { 3, 17, 29, 44 })
        {
            string text = RandomAlgorithm.Of(seed);
            var found = Checker.Check(
                AlgorithmReader.Read("random", text).OrThrow(), "random", new() { Reductions = Reductions.None });
            var counted = SpinRun.Of(new PromelaWriter(new PlainCode(text, "random")).Write(claimsOnce: false));
            Assert.True(
                counted.States - 1 == found.States,
                string.Create(CultureInfo.InvariantCulture, $"{counted.States - 1}, not {found.States}: {text}"));
        }
    }
}
