namespace Rookery.Notation.Randomness;

/// <summary>The SplitMix64 generator: turns any 64-bit seed into a sequence of well-mixed 64-bit numbers.</summary>
/// <remarks>
/// Used to seed <see cref="Xoshiro256StarStar"/> and for <c>pick</c>. Source: Steele, Lea, Flood, "Fast splittable
/// pseudorandom number generators", OOPSLA 2014; constants as in Vigna's reference code. Worked example: seed 1234567
/// gives 6457827717110365317, 3203168211198807973, 9817491932198370423. <c>default</c> is the generator of seed 0.
/// Mutable: copy it to keep a state.
/// </remarks>
public struct SplitMix64
{
    private ulong _state;

    /// <summary>Starts the sequence of a seed; every seed is a good one.</summary>
    public SplitMix64(ulong seed) => _state = seed;

    /// <summary>The next number, uniform over all 64-bit values.</summary>
    public ulong Next()
    {
        unchecked
        {
            _state += 0x9e3779b97f4a7c15;
            return Mix(_state);
        }
    }

    /// <summary>
    /// The generator's output function by itself: a bijection that spreads each input bit over the word.
    /// </summary>
    public static ulong Mix(ulong z)
    {
        unchecked
        {
            z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9;
            z = (z ^ (z >> 27)) * 0x94d049bb133111eb;
            return z ^ (z >> 31);
        }
    }
}
