using System.Collections.Immutable;

namespace Rookery.Programs;

/// <summary>Everything besides its text that a program's meaning depends on.</summary>
/// <param name="Parameters">Values for parameters; those left out have their defaults.</param>
/// <param name="Data">Where data files come from.</param>
/// <param name="Seed">What <c>pick</c> draws from.</param>
/// <param name="Limits">How far the program may go.</param>
public sealed record BindInputs(
    ImmutableSortedDictionary<string, long> Parameters, IDataSource Data, long Seed, EvaluationLimits Limits)
{
    /// <summary>Defaults for all parameters, no files, seed 1.</summary>
    public static BindInputs Default { get; } = new(
        ImmutableSortedDictionary.Create<string, long>(StringComparer.Ordinal), TextDataSource.Empty, 1,
        EvaluationLimits.Default);
}
