namespace Rookery.Testing;

/// <summary>What generated programs may contain.</summary>
/// <param name="TasksMax">Tasks in one run at most.</param>
/// <param name="ActionsMax">Actions in one run at most.</param>
/// <param name="WithBlock">Whether tasks may wait on something outside.</param>
/// <param name="WithPick">Whether amounts and shapes may depend on the seed.</param>
/// <param name="UnitsMax">Largest amount of one work statement.</param>
public sealed record ProgramGenOptions(
    long TasksMax = 2_000, long ActionsMax = 20_000, bool WithBlock = true, bool WithPick = true, long UnitsMax = 40)
{
    /// <summary>A bit of everything.</summary>
    public static ProgramGenOptions Default { get; } = new();
}
