using System.Text.RegularExpressions;
using Rookery.Checking.Tests.Shipped;

namespace Rookery.Checking.Tests.References;

/// <summary>What papers say about all deques.</summary>
public sealed partial class DequeReferences
{
    /// <summary>
    /// H. Attiya, R. Guerraoui, D. Hendler, P. Kuznetsov, M. M. Michael, M. Vechev, "Laws of Order", POPL 2011: whoever
    /// gives each item exactly once must pay with a fence or a locked instruction in the operation that takes out (that
    /// work stealing is covered: from memory). Without, store buffers must break it.
    /// </summary>
    [Theory]
    [InlineData("growable-weak.dq")]
    [InlineData("growable-retry.dq")]
    [InlineData("tagged-top.dq")]
    [InlineData("thief-lock.dq")]
    public void ExactlyOnce_OwnerWithoutFence_IsBrokenByStoreBuffers(string file)
    {
        string text = ShippedFiles.WithExpectation(ShippedFiles.Read(file), "expect once");
        int pop = text.IndexOf("operation pop", StringComparison.Ordinal);
        int steal = text.IndexOf("operation steal", StringComparison.Ordinal);
        string cheap = text[..pop] + FullFence().Replace(text[pop..steal], "") + text[steal..];
        Assert.NotEqual(text, cheap);
        Assert.Contains(Verdict.Broken, VerdictsOf(cheap, MemoryModel.Tso));
        Assert.All(ShippedResults.Of(file, MemoryModel.Tso), one => Assert.Equal(Verdict.Holds, one.Verdict));
        Assert.DoesNotContain(Verdict.Broken, VerdictsOf(cheap, MemoryModel.Sc));
    }

    /// <summary>
    /// M. M. Michael, M. T. Vechev, V. A. Saraswat, "Idempotent Work Stealing", PPoPP 2009: without fence and locked
    /// instruction for the owner each task is extracted at least once; duplicates are possible, losses are not.
    /// </summary>
    [Theory]
    [InlineData(MemoryModel.Sc)]
    [InlineData(MemoryModel.Tso)]
    public void Idempotent_AnyModel_MayRepeatButLosesNothing(MemoryModel model)
    {
        string text = ShippedFiles.Read("idempotent.dq");
        Assert.All(ShippedResults.Of("idempotent.dq", model), one => Assert.Equal(Verdict.Holds, one.Verdict));
        Assert.Contains(Verdict.Broken, VerdictsOf(
            ShippedFiles.WithExpectation(text, "expect none twice"), model));
        int pop = text.IndexOf("operation pop", StringComparison.Ordinal);
        int steal = text.IndexOf("operation steal", StringComparison.Ordinal);
        Assert.DoesNotContain("cas(", text[pop..steal], StringComparison.Ordinal);
        Assert.DoesNotContain("fence", text[pop..steal], StringComparison.Ordinal);
    }

    /// <summary>
    /// M. Frigo, C. E. Leiserson, K. H. Randall, PLDI 1998: the protocol needs no fence under sequential consistency;
    /// that both fences matter under store buffers is common practice.
    /// </summary>
    [Fact]
    public void ThiefLock_FenceByFence_BothMatterUnderStoreBuffersOnly()
    {
        string text = ShippedFiles.Read("thief-lock.dq");
        string[] parts = FullFence().Split(text);
        Assert.Equal(3, parts.Length);
        string[] weaker =
            [$"{parts[0]}{parts[1]}    fence\n{parts[2]}", $"{parts[0]}    fence\n{parts[1]}{parts[2]}"];
        foreach (string weak in weaker)
        {
            Assert.DoesNotContain(Verdict.Broken, VerdictsOf(weak, MemoryModel.Sc));
            Assert.Contains(Verdict.Broken, VerdictsOf(weak, MemoryModel.Tso));
        }
    }

    private static Verdict[] VerdictsOf(string text, MemoryModel model)
    {
        var algorithm = AlgorithmReader.Read("deque", text).OrThrow();
        return [.. algorithm.Scenarios.Select(scenario => Checker.Check(
            algorithm, scenario, new() { Memory = model, ClassifiesProgress = false }).Verdict)];
    }

    [GeneratedRegex(@"^ +fence *(#.*)?\n", RegexOptions.Multiline | RegexOptions.ExplicitCapture)]
    private static partial Regex FullFence();
}
