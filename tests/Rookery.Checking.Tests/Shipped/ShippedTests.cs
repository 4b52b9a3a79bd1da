namespace Rookery.Checking.Tests.Shipped;

/// <summary>Each shipped file says in its first lines what it is and how it fares; the checker must agree.</summary>
public sealed class ShippedTests
{
    public static TheoryData<string> Files { get; } = [.. ShippedFiles.All()];

    [Theory]
    [MemberData(nameof(Files))]
    public void Shipped_EveryModel_FaresAsStated(string file)
    {
        string text = ShippedFiles.Read(file);
        foreach (MemoryModel model in Enum.GetValues<MemoryModel>())
        {
            string stated = ShippedFiles.StatedVerdict(text, model.ToString().ToLowerInvariant());
            Verdict[] verdicts = [.. ShippedResults.Of(file, model).Select(one => one.Verdict)];
            var worst = verdicts.Contains(Verdict.Broken) ? Verdict.Broken : verdicts[0];
            Assert.Equal(stated, worst.ToString().ToLowerInvariant());
            Assert.DoesNotContain(Verdict.OutOfBudget, verdicts);
        }
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Shipped_WithAndWithoutReductions_SameVerdictsAndOutcomes(string file)
    {
        var algorithm = AlgorithmReader.Read(file, ShippedFiles.Read(file)).OrThrow();
        string scenario = algorithm.Scenarios[Math.Min(1, algorithm.Scenarios.Length - 1)];
        foreach (MemoryModel model in Enum.GetValues<MemoryModel>())
        {
            var options = new CheckOptions { Memory = model, ClassifiesProgress = false };
            var reduced = ShippedResults.Of(file, scenario, model);
            var plain = Checker.Check(
                algorithm, scenario, options with { Reductions = Reductions.None, StatesMax = 150_000 });
            if (plain.Exhausted is not null)
            {
                Assert.NotEqual(MemoryModel.Sc, model);
                continue;
            }

            Assert.Equal(plain.Verdict, reduced.Verdict);
            Assert.Equal(plain.Property, reduced.Property);
            Assert.Equal(plain.Outcomes.Select(one => one.Text), reduced.Outcomes.Select(one => one.Text));
            Assert.True(reduced.States <= plain.States);
        }
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Shipped_Head_NamesItsSourceAndSaysWhy(string file)
    {
        string[] head = [.. ShippedFiles.Read(file).Split('\n').TakeWhile(line => line.StartsWith('#'))];
        string kind = file.StartsWith("broken/", StringComparison.Ordinal) ? "A mutation of" : "Source:";
        Assert.Contains(head, line => line.Contains(kind, StringComparison.Ordinal));
        Assert.All(ShippedFiles.Read(file).Split('\n'), line => Assert.True(line.Length <= 120));
    }

    [Fact]
    public void Shipped_StoredStates_TakeAtMost64BytesEach()
    {
        foreach (string file in ShippedFiles.All().Where(one => !one.Contains('/', StringComparison.Ordinal)))
        {
            foreach (MemoryModel model in Enum.GetValues<MemoryModel>())
            {
                var found = ShippedResults.Of(file, model)[^1];
                Assert.True(found.StateBytes <= 64, $"{file}, {model}: {found.StateBytes} bytes");
            }
        }
    }
}
