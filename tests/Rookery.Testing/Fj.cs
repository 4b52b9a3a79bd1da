using System.Collections.Immutable;
using Rookery.Notation;
using Rookery.Programs;

namespace Rookery.Testing;

/// <summary>Short ways from a program's text to a program that runs.</summary>
public static class Fj
{
    /// <summary>Reads and binds a program that must be right.</summary>
    /// <exception cref="InputException">It is not.</exception>
    public static BoundProgram Bind(
        string text, long seed = 1, EvaluationLimits? limits = null, string? tiles = null) =>
        Read(text).Bind(Inputs(seed, limits, tiles)).OrThrow();

    /// <summary>Reads a program that must be right.</summary>
    /// <exception cref="InputException">It is not.</exception>
    public static FjProgram Read(string text) => ProgramReader.Read("test.fj", text).OrThrow();

    /// <summary>Inputs with one file, <c>tiles.csv</c>, or none.</summary>
    public static BindInputs Inputs(long seed = 1, EvaluationLimits? limits = null, string? tiles = null) => new(
        ImmutableSortedDictionary.Create<string, long>(StringComparer.Ordinal),
        tiles is null ? TextDataSource.Empty : TextDataSource.Of("tiles.csv", tiles),
        seed,
        limits ?? EvaluationLimits.Default);
}
