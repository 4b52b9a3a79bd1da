using Rookery.Notation.Randomness;

namespace Rookery.Programs.Evaluation;

/// <summary>What <c>pick(lo, hi, KEY...)</c> computes: a uniform integer that depends on seed and keys only.</summary>
/// <remarks>
/// <para>
/// With <c>G = 0x9e3779b97f4a7c15</c>, all arithmetic modulo 2^64: <c>h0 = Mix(seed + G)</c>, and for each key in order
/// <c>h(n+1) = Mix((h(n) + G) xor key)</c>. The last h seeds a <see cref="SplitMix64"/>. A number below the length of
/// the range comes from its outputs by the high half of a 128-bit product, with rejection (Lemire 2019, the method of
/// <see cref="Xoshiro256StarStar.NextBelow"/>), so every number has the same chance. A range of all 2^64 numbers takes
/// the first output as it is.
/// </para>
/// <para>Mutable: add the keys, then draw.</para>
/// </remarks>
internal struct PickHash
{
    private const ulong Golden = 0x9e3779b97f4a7c15;
    private ulong _hash;

    public PickHash(ulong seed) => _hash = SplitMix64.Mix(unchecked(seed + Golden));

    public void Add(long key) => _hash = SplitMix64.Mix(unchecked((_hash + Golden) ^ (ulong)key));

    /// <summary>A number from <paramref name="lower"/> to <paramref name="upper"/>, both ends included.</summary>
    public readonly long Draw(long lower, long upper)
    {
        unchecked
        {
            var generator = new SplitMix64(_hash);
            ulong bound = (ulong)upper - (ulong)lower + 1;
            if (bound == 0)
                return (long)generator.Next();
            ulong high = Math.BigMul(generator.Next(), bound, out ulong low);
            if (low < bound)
            {
                ulong threshold = (0 - bound) % bound;
                while (low < threshold)
                    high = Math.BigMul(generator.Next(), bound, out low);
            }

            return (long)((ulong)lower + high);
        }
    }
}
