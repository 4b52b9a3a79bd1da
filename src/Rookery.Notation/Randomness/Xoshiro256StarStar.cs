using System.Numerics;

namespace Rookery.Notation.Randomness;

/// <summary>The xoshiro256** generator: 256 bits of state, with jumps to streams that do not overlap.</summary>
/// <remarks>
/// Source: Blackman, Vigna, "Scrambled linear pseudorandom number generators", ACM TOMS 47(4), 2021. Worked example:
/// state (1, 2, 3, 4) gives 11520, 0, 1509978240. <c>default</c> is not a generator (an all-zero state stays zero):
/// make one from a seed or a state. Mutable: copy it to keep a state.
/// </remarks>
public struct Xoshiro256StarStar
{
    private ulong _s0;
    private ulong _s1;
    private ulong _s2;
    private ulong _s3;

    /// <summary>Starts from a state, which must not be all zero.</summary>
    /// <exception cref="ArgumentException">All four words are zero.</exception>
    public Xoshiro256StarStar(ulong s0, ulong s1, ulong s2, ulong s3)
    {
        if ((s0 | s1 | s2 | s3) == 0)
            throw new ArgumentException("An all-zero state gives zeros only.");
        (_s0, _s1, _s2, _s3) = (s0, s1, s2, s3);
    }

    /// <summary>
    /// Starts from a seed: four outputs of <see cref="SplitMix64"/> make the state, as its authors advise.
    /// </summary>
    public static Xoshiro256StarStar FromSeed(ulong seed)
    {
        var mixer = new SplitMix64(seed);
        return new(mixer.Next(), mixer.Next(), mixer.Next(), mixer.Next());
    }

    /// <summary>The state, in the order of the paper.</summary>
    public readonly (ulong S0, ulong S1, ulong S2, ulong S3) State => (_s0, _s1, _s2, _s3);

    /// <summary>The next number, uniform over all 64-bit values.</summary>
    public ulong Next()
    {
        unchecked
        {
            ulong result = BitOperations.RotateLeft(_s1 * 5, 7) * 9;
            ulong t = _s1 << 17;
            _s2 ^= _s0;
            _s3 ^= _s1;
            _s1 ^= _s2;
            _s0 ^= _s3;
            _s2 ^= t;
            _s3 = BitOperations.RotateLeft(_s3, 45);
            return result;
        }
    }

    /// <summary>A number from 0 up to, not including, <paramref name="bound"/>; each with the same chance.</summary>
    /// <remarks>
    /// The high half of a 128-bit product, with rejection, so there is no bias. Source: Lemire, "Fast random integer
    /// generation in an interval", ACM TOMACS 29(1), 2019.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The bound is 0.</exception>
    public ulong NextBelow(ulong bound)
    {
        ArgumentOutOfRangeException.ThrowIfZero(bound);
        unchecked
        {
            ulong high = Math.BigMul(Next(), bound, out ulong low);
            if (low < bound)
            {
                ulong threshold = (0 - bound) % bound;
                while (low < threshold)
                    high = Math.BigMul(Next(), bound, out low);
            }

            return high;
        }
    }

    /// <summary>Skips 2^128 numbers: streams made by repeated jumps do not overlap in any run that could end.</summary>
    public void Jump()
    {
        ReadOnlySpan<ulong> polynomial =
            [0x180ec6d33cfd0aba, 0xd5a61266f0c9392c, 0xa9582618e03fc9aa, 0x39abdc4529b1661c];
        ulong t0 = 0, t1 = 0, t2 = 0, t3 = 0;
        foreach (ulong word in polynomial)
        {
            for (int bit = 0; bit < 64; bit++)
            {
                if ((word & (1UL << bit)) != 0)
                {
                    t0 ^= _s0;
                    t1 ^= _s1;
                    t2 ^= _s2;
                    t3 ^= _s3;
                }

                Next();
            }
        }

        (_s0, _s1, _s2, _s3) = (t0, t1, t2, t3);
    }
}
