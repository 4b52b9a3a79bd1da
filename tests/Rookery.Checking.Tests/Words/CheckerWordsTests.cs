using System.Text.RegularExpressions;
using Rookery.Checking.Tests.Shipped;
using Rookery.Checking.Witnesses;
using Rookery.Checking.Words;

namespace Rookery.Checking.Tests.Words;

public sealed partial class CheckerWordsTests
{
    public static TheoryData<string> Files { get; } = [.. ShippedFiles.All()];

    [Theory]
    [MemberData(nameof(Files))]
    public void Found_InGerman_SpeaksNoEnglish(string file)
    {
        foreach (MemoryModel model in Enum.GetValues<MemoryModel>())
        {
            foreach (CheckResult result in ShippedResults.Of(file, model))
                AssertGerman(result);
        }
    }

    [Theory]
    [InlineData(DeedKind.LoadPast, false,
        "a reads x = 1 from memory, where the write that waits in the buffer of b has not arrived.",
        "a liest x = 1 aus dem Speicher (der Schreibzugriff, der im Puffer von b wartet, ist noch nicht angekommen).",
        "x: 1")]
    [InlineData(DeedKind.Load, true,
        "a for its next operation reads x = 1.", "a liest für die nächste Operation x = 1.", "x: 1")]
    [InlineData(DeedKind.CompareAndSwap, false,
        "a finds 2 in x and swaps in 1.", "a findet 2 in x und tauscht 1 ein.", "x 2→1 ja")]
    [InlineData(DeedKind.Return, false,
        "a returns empty from take().", "a kehrt mit empty aus take() zurück.", "return empty")]
    [InlineData(DeedKind.Begin, false, "a begins take().", "a beginnt take().", "")]
    public void Sentence_OfADeed_IsSaidInBothLanguages(
        DeedKind kind, bool isForNext, string english, string german, string germanShort)
    {
        WitnessStep step = StepOf(false, DeedOf(kind) with { IsForNext = isForNext });
        Assert.Equal(english, CheckerWords.English.Sentence(step));
        Assert.Equal(german, CheckerWords.German.Sentence(step));
        Assert.Equal(germanShort, CheckerWords.German.Short(step));
    }

    [Fact]
    public void Sentence_OfSeveralDeeds_JoinsThem()
    {
        WitnessStep step = StepOf(
            false, DeedOf(DeedKind.Begin), DeedOf(DeedKind.StoreBuffered), DeedOf(DeedKind.Return));
        Assert.Equal(
            "a begins take(), puts x = 1 into its buffer and returns empty from take().",
            CheckerWords.English.Sentence(step));
        Assert.Equal(
            "a beginnt take(), legt x = 1 in den eigenen Puffer und kehrt mit empty aus take() zurück.",
            CheckerWords.German.Sentence(step));
        Assert.Equal("x = 1; return empty", CheckerWords.English.Short(step));
        Assert.Equal("a goes on.", CheckerWords.English.Sentence(StepOf(false)));
    }

    [Fact]
    public void Words_OfBothLanguages_DifferForEveryFact()
    {
        foreach (DeedKind kind in Enum.GetValues<DeedKind>())
        {
            WitnessStep step = StepOf(kind == DeedKind.Arrive, DeedOf(kind));
            AssertDiffer(words => words.Sentence(step));
        }

        foreach (Property property in Enum.GetValues<Property>())
        {
            AssertDiffer(words => words.Why(FindingOf(property)));
            AssertDiffer(words => words.Why(FindingOf(property) with { WasPut = true, Drained = [2] }));
        }

        AssertDiffer(words => words.Why(new Finding((Property?)null)));
        foreach (ComputationTrouble trouble in Enum.GetValues<ComputationTrouble>())
            AssertDiffer(words => words.Why(FindingOf(Property.Computation) with { Trouble = trouble }));
        foreach (ProgressReasonKind kind in Enum.GetValues<ProgressReasonKind>())
        {
            var reason = new ProgressReason(kind) { Call = "take()", Thread = "a", Line = 3, StepsMax = 4 };
            AssertDiffer(words => words.Why(reason));
            AssertDiffer(words => words.Why(reason with { Movers = ["b", "c"], Others = [("b", 5), ("c", 6)] }));
        }
    }

    private static void AssertGerman(CheckResult result)
    {
        var witness = result.Witness;
        IEnumerable<string> said =
        [
            .. witness?.Steps.Select(CheckerWords.German.Sentence) ?? [],
            .. witness?.Steps.Select(CheckerWords.German.Short) ?? [],
            .. witness?.Finding is { } finding ? [CheckerWords.German.Why(finding)] : Array.Empty<string>(),
            .. result.Progress.Select(one => CheckerWords.German.Why(one.Reason)),
        ];
        Assert.All(said, one => Assert.DoesNotMatch(EnglishWords(), one));
    }

    private static void AssertDiffer(Func<CheckerWords, string> say)
    {
        string german = say(CheckerWords.German);
        Assert.NotEqual(say(CheckerWords.English), german);
        Assert.DoesNotMatch(EnglishWords(), german);
        Assert.DoesNotContain("  ", german, StringComparison.Ordinal);
    }

    private static Deed DeedOf(DeedKind kind) => new(kind)
    {
        Call = "take()",
        Result = "empty",
        Place = "x",
        Value = 1,
        Former = 2,
        Newest = 3,
        Holder = "b",
    };

    private static Finding FindingOf(Property property) => new(property)
    {
        Line = 7,
        Items = [1],
        Takers = [("take()", "a"), ("", "")],
        Waiting = [("a", 3), ("b", 4)],
    };

    private static WitnessStep StepOf(bool isMemory, params Deed[] deeds) =>
        new(0, "a", isMemory, 3, [.. deeds], new([], []));

    // Words of the notation, names and results, stay: they are those of the algorithm beside the sentence.
    [GeneratedRegex(
        @"\b(the|of|and|from|is|in which|reads?|writes?|begins|returns|ends|finds|puts|its|line|memory|buffer|"
        + @"nobody|can|waits|while|arrives|yes|no)\b")]
    private static partial Regex EnglishWords();
}
