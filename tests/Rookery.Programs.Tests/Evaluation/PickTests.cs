using Rookery.Notation.Randomness;
using Rookery.Testing;

namespace Rookery.Programs.Tests.Evaluation;

public sealed class PickTests
{
    [Fact]
    public void Pick_SameKeysAndSeed_GivesTheSame() =>
        Gen.Select(Gen.Long, Gen.Long, Gen.Long).Sample(
            (seed, a, b) => Pick(seed, 0, 1_000_000, a, b) == Pick(seed, 0, 1_000_000, a, b), iter: 200);

    [Fact]
    public void Pick_AnyRange_StaysInsideBothEnds() =>
        Gen.Select(Gen.Long, Gen.Long, Gen.Long).Sample(
            (a, b, key) =>
            {
                long lower = Math.Min(a, b), upper = Math.Max(a, b);
                long value = Pick(1, lower, upper, key);
                return lower <= value && value <= upper;
            },
            iter: 300);

    // The algorithm of docs/notation.md, written down once more: whoever repeats a run elsewhere needs exactly this.
    [Fact]
    public void Pick_SmallRange_IsTheDocumentedHash()
    {
        const ulong G = 0x9e3779b97f4a7c15;
        for (long key = -5; key < 5; key++)
        {
            ulong hash = SplitMix64.Mix(unchecked(7 + G));
            hash = SplitMix64.Mix(unchecked((hash + G) ^ (ulong)key));
            hash = SplitMix64.Mix(unchecked((hash + G) ^ 3));
            ulong draw = new SplitMix64(hash).Next();
            Assert.Equal(1 + (long)(ulong)(((UInt128)draw * 6) >> 64), Pick(7, 1, 6, key, 3));
        }
    }

    [Fact]
    public void Pick_ManyKeys_IsUniform()
    {
        // Chi-squared with 5 degrees of freedom: above 20.5 one time in a thousand, and the seed is fixed.
        var counts = new int[6];
        for (long key = 0; key < 6_000; key++)
            counts[Pick(3, 0, 5, key)]++;
        Assert.True(counts.Sum(count => (count - 1_000.0) * (count - 1_000) / 1_000) < 20.5);
    }

    [Fact]
    public void Pick_NumberOfKeys_Matters() =>
        Assert.NotEqual(Pick(0, 0, long.MaxValue, 0), Pick(0, 0, long.MaxValue, 0, 0));

    private static long Pick(long seed, long lower, long upper, params long[] keys)
    {
        string text = FormattableString.Invariant($"const p = pick({lower}, {upper}, {string.Join(", ", keys)})\n")
            + "task t(n)\n    join\nstart t(p)";
        return Fj.Bind(text, seed).StartArguments[0];
    }
}
