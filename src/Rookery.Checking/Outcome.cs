using System.Collections.Immutable;

namespace Rookery.Checking;

/// <summary>One of the ways in which a scenario can end.</summary>
/// <param name="Results">For each operation, as <c>owner: pop() = 2</c>, in the order of the scenario.</param>
/// <param name="Observed">For each observed place, as <c>x = 1</c>.</param>
public sealed record Outcome(ImmutableArray<string> Results, ImmutableArray<string> Observed)
{
    /// <summary>All of it on one line.</summary>
    public string Text => string.Join(", ", Results.Concat(Observed));
}
