using System.Text;
using Rookery.Checking.Tests.Naive;
using Rookery.Checking.Tests.Shipped;

namespace Rookery.Checking.Tests.Reading;

/// <summary>Whatever strangers send, reading answers with an algorithm or with diagnostics of ours.</summary>
public sealed class BadInputProperties
{
    private const int Texts = 110_000;
    private const string Signs = " \n#()[]=<>+-*/%\"':,.xyz0129\t\u2264lock let if while return fence cas ";

    [Fact]
    public void Read_MutatedTexts_NeverFailOtherwise()
    {
        string[] seeds =
        [
            .. ShippedFiles.All().Select(ShippedFiles.Read).Where(text => text.Length < 2_500),
            .. Enumerable.Range(1, 20).Select(seed => RandomAlgorithm.Of((ulong)seed)),
        ];
        var random = new Random(1);
        int good = 0;
        for (int count = 0; count < Texts; count++)
        {
            string text = Mutated(seeds[random.Next(seeds.Length)], random);
            var read = AlgorithmReader.Read("mutated.dq", text);
            Assert.Equal(read.IsValid, read.Diagnostics.IsEmpty);
            Assert.All(read.Diagnostics, one => Assert.Matches("^(DQ|NT)[0-9]{3}$", one.Code));
            good += read.IsValid ? 1 : 0;
            if (read.IsValid && good % 120 == 0)
                CheckQuickly(read.Value!);
        }

        Assert.InRange(good, 1_000, Texts - 1_000);
    }

    private static void CheckQuickly(Algorithm algorithm)
    {
        var model = (MemoryModel)(algorithm.Source.Text.Length % 4);
        try
        {
            Checker.Check(algorithm, algorithm.Scenarios[0], new() { Memory = model, StatesMax = 2_000 });
        }
        catch (Rookery.Notation.InputException wrong)
        {
            // The condition of a litmus test may have no value: an index outside, a division by zero.
            Assert.All(wrong.Diagnostics, one => Assert.StartsWith("DQ06", one.Code, StringComparison.Ordinal));
        }
    }

    private static string Mutated(string text, Random random)
    {
        var changed = new StringBuilder(text);
        for (int change = random.Next(1, 4); change > 0; change--)
        {
            int at = random.Next(changed.Length);
            switch (random.Next(5))
            {
                case 0:
                    changed[at] = Signs[random.Next(Signs.Length)];
                    break;
                case 1:
                    changed.Remove(at, Math.Min(random.Next(1, 8), changed.Length - at));
                    break;
                case 2:
                    changed.Insert(at, Signs[random.Next(Signs.Length)]);
                    break;
                case 3:
                    int from = random.Next(text.Length);
                    changed.Insert(at, text.AsSpan(from, Math.Min(random.Next(1, 30), text.Length - from)));
                    break;
                default:
                    changed.Replace("\n    ", "\n", at, Math.Min(40, changed.Length - at));
                    break;
            }

            if (changed.Length == 0)
                return "";
        }

        return changed.ToString();
    }
}
