namespace Rookery.Programs.Analyses;

/// <summary>The shifts of a task's arguments that leave its cost as it is.</summary>
/// <remarks>
/// A basis of vectors over the arguments, in the end of whole numbers: any whole multiples of them may be added to the
/// arguments. Each vector has a 1 at its pivot, where all others have 0. Example: <c>count(lo, hi)</c> has the one
/// vector (1, 1).
/// </remarks>
/// <param name="arguments">Number of arguments.</param>
/// <param name="vectors">The vectors.</param>
/// <param name="pivots">For each vector its pivot.</param>
internal sealed class Translations(int arguments, Fraction[][] vectors, int[] pivots)
{
    public int Arguments { get; } = arguments;

    public Fraction[][] Vectors { get; } = vectors;

    public int[] Pivots { get; } = pivots;

    public int Count => Vectors.Length;

    /// <summary>For each argument whether some shift changes it.</summary>
    public bool[] Moves { get; } =
        [.. Enumerable.Range(0, arguments).Select(i => vectors.Any(vector => !vector[i].IsZero))];

    /// <summary>No shift at all.</summary>
    public static Translations None(int arguments) => new(arguments, [], []);

    /// <summary>Every argument by itself.</summary>
    public static Translations All(int arguments)
    {
        var vectors = new Fraction[arguments][];
        for (int i = 0; i < arguments; i++)
        {
            vectors[i] = new Fraction[arguments];
            vectors[i][i] = Fraction.One;
        }

        return new(arguments, vectors, [.. Enumerable.Range(0, arguments)]);
    }

    /// <summary>
    /// The arguments shifted so that those at pivots are 0: equal for arguments that differ by a shift.
    /// </summary>
    /// <returns>False when a number would leave 64 bits.</returns>
    public bool TryNormalise(ReadOnlySpan<long> arguments, Span<long> normal)
    {
        arguments.CopyTo(normal);
        for (int k = 0; k < Vectors.Length; k++)
        {
            long shift = arguments[Pivots[k]];
            for (int i = 0; i < arguments.Length; i++)
            {
                Int128 moved = normal[i] - ((Int128)shift * Vectors[k][i].Numerator);
                if (moved < long.MinValue || moved > long.MaxValue)
                    return false;
                normal[i] = (long)moved;
            }
        }

        return true;
    }
}
