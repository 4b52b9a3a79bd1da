using System.Runtime.CompilerServices;

namespace Rookery.Checking.Exploring;

/// <summary>Hashes states; the same on every machine.</summary>
internal static class StateHash
{
    /// <summary>64 well mixed bits of all words (multiply and fold, as in MurmurHash's finaliser).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ulong Of(ReadOnlySpan<ulong> state)
    {
        unchecked
        {
            ulong hash = 0x9E37_79B9_7F4A_7C15;
            foreach (ulong word in state)
            {
                hash = (hash ^ word) * 0xFF51_AFD7_ED55_8CCD;
                hash ^= hash >> 32;
            }

            hash *= 0xC4CE_B9FE_1A85_EC53;
            return hash ^ (hash >> 29);
        }
    }

    /// <summary>The half that a shard's table uses.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static uint Half(ulong hash) => unchecked((uint)hash);
}
