using System.Collections.Concurrent;
using System.Globalization;
using Rookery.Checking.Tests.Naive;
using Rookery.Checking.Words;

namespace Rookery.Checking.Tests.Exploring;

/// <summary>Random small algorithms: our explorer against the plain one.</summary>
public sealed class CheckerModels
{
    private const int Count = 80;

    private static readonly ConcurrentDictionary<(string, MemoryModel, bool), Lazy<CheckResult>> Known = new();

    [Theory]
    [InlineData(MemoryModel.Sc)]
    [InlineData(MemoryModel.Tso)]
    [InlineData(MemoryModel.Pso)]
    public void Check_WithoutReductions_CountsAsTheNaiveExplorer(MemoryModel model)
    {
        for (ulong seed = 1; seed <= Count; seed++)
        {
            string text = RandomAlgorithm.Of(seed);
            var naive = new NaiveExplorer(new PlainCode(text, "random"), model);
            var plain = Check(text, model, reduces: false);
            string seen = $"seed {seed}\n{text}";
            Assert.True(naive.States == plain.States, $"{naive.States} states, not {plain.States}: {seen}");
            Assert.True(naive.Transitions == plain.Transitions, $"{naive.Transitions} steps: {seen}");
            Assert.True(naive.Outcomes.Count == plain.Outcomes.Length, seen);
            Assert.Equal(naive.HasDeadlock ? Verdict.Broken : Verdict.Holds, plain.Verdict);
        }
    }

    [Theory]
    [InlineData(MemoryModel.Sc)]
    [InlineData(MemoryModel.Tso)]
    [InlineData(MemoryModel.Pso)]
    [InlineData(MemoryModel.Ra)]
    public void Check_WithReductions_HasTheSameOutcomesInFewerStates(MemoryModel model)
    {
        for (ulong seed = 1; seed <= Count; seed++)
        {
            string text = RandomAlgorithm.Of(seed);
            var plain = Check(text, model, reduces: false);
            var reduced = Check(text, model, reduces: true);
            Assert.Equal(plain.Outcomes.Select(one => one.Text), reduced.Outcomes.Select(one => one.Text));
            Assert.True(reduced.States <= plain.States, text);
            Assert.Equal(plain.Verdict, reduced.Verdict);
        }
    }

    [Fact]
    public void Check_WeakerModel_HasAllOutcomesOfTheStronger()
    {
        (MemoryModel Stronger, MemoryModel Weaker)[] pairs =
        [
            (MemoryModel.Sc, MemoryModel.Tso), (MemoryModel.Tso, MemoryModel.Pso), (MemoryModel.Sc, MemoryModel.Ra),
        ];
        for (ulong seed = 1; seed <= Count; seed++)
        {
            string text = RandomAlgorithm.Of(seed);
            foreach (var (stronger, weaker) in pairs)
            {
                var more = Check(text, weaker).Outcomes.Select(one => one.Text).ToHashSet(StringComparer.Ordinal);
                Assert.All(Check(text, stronger).Outcomes, one => Assert.Contains(one.Text, more));
            }
        }
    }

    /// <summary>
    /// A full fence between any two accesses makes every model sequentially consistent (common practice; for C11
    /// fences: Lahav, Vafeiadis, Kang, Hur and Dreyer, PLDI 2017).
    /// </summary>
    [Theory]
    [InlineData(MemoryModel.Tso)]
    [InlineData(MemoryModel.Pso)]
    [InlineData(MemoryModel.Ra)]
    public void Check_FencedEverywhere_IsSequentiallyConsistent(MemoryModel model)
    {
        for (ulong seed = 1; seed <= Count; seed++)
        {
            string text = RandomAlgorithm.Of(seed, isFenced: true);
            Assert.Equal(
                Check(text, MemoryModel.Sc).Outcomes.Select(one => one.Text),
                Check(text, model).Outcomes.Select(one => one.Text));
        }
    }

    [Fact]
    public void Check_OnSeveralThreads_GivesTheSameResult()
    {
        for (ulong seed = 1; seed <= 40; seed++)
        {
            string text = RandomAlgorithm.Of(seed);
            var one = Check(text, MemoryModel.Ra);
            var many = Checker.Check(
                AlgorithmReader.Read("random", text).OrThrow(), "random",
                new() { Memory = MemoryModel.Ra, Run = (count, part) => Parallel.For(0, count, part) });
            Assert.Equal(one.States, many.States);
            Assert.Equal(one.Transitions, many.Transitions);
            Assert.Equal(
                string.Join('\n', one.Witness?.Steps.Select(CheckerWords.English.Sentence) ?? []),
                string.Join('\n', many.Witness?.Steps.Select(CheckerWords.English.Sentence) ?? []));
        }
    }

    // Several tests ask for the same.
    private static CheckResult Check(string text, MemoryModel model, bool reduces = true) => Known.GetOrAdd(
        (text, model, reduces), static one => new(() => Compute(one.Item1, one.Item2, one.Item3))).Value;

    private static CheckResult Compute(string text, MemoryModel model, bool reduces)
    {
        var parsed = AlgorithmReader.Read("random", text);
        Assert.True(parsed.IsValid, string.Create(
            CultureInfo.InvariantCulture, $"{parsed.Diagnostics.FirstOrDefault()}\n{text}"));
        return Checker.Check(
            parsed.Value, "random", new()
            {
                Memory = model,
                Reductions = reduces ? Reductions.All : Reductions.None,
                ClassifiesProgress = false,
            });
    }
}
