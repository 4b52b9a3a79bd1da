using System.Collections.Immutable;
using System.Globalization;
using Rookery.Simulation;
using Rookery.Traces;

namespace Rookery.Reports;

/// <summary>How a run starved, in sentences that name the circle of waits.</summary>
internal static class StarvationText
{
    /// <summary>Waits named one by one; a thread for each task can have thousands.</summary>
    private const int WaitsMax = 8;

    /// <summary>Says it.</summary>
    public static ImmutableArray<string> Of(Starvation starvation, string unit, ITaskLabels labels)
    {
        ImmutableArray<StarvedWait> cycle = starvation.Cycle();
        ImmutableArray<StarvedWait> waits = [.. cycle, .. starvation.Waits.Except(cycle)];
        var said = ImmutableArray.CreateBuilder<string>();
        said.Add($"The run starved at {Say.Time(starvation.Time, unit)}: every worker waits at a join, and none of "
            + "them can run what they wait for.");
        for (int i = 0; i < Math.Min(waits.Length, WaitsMax); i++)
        {
            said.Add(WaitText(waits[i], labels));
            if (i == cycle.Length - 1 && cycle.Length > 1)
                said.Add("That closes the circle.");
        }

        if (waits.Length > WaitsMax)
            said.Add($"{Say.Count(waits.Length - WaitsMax, "more worker")} wait beside.");
        return said.ToImmutable();
    }

    private static string WaitText(StarvedWait wait, ITaskLabels labels)
    {
        string line = wait.Line > 0 ? string.Create(CultureInfo.InvariantCulture, $" at line {wait.Line}") : "";
        string child = labels.LabelOf(wait.AwaitedTask);
        string where = (wait.IsQueued, wait.HeldBy) switch
        {
            (true, < 0) => "stands in the queue of all, where only a worker that is free could take it",
            (true, _) => $"stands in the deque of worker {Say.Whole(wait.HeldBy)}",
            (false, < 0) => "is held by nobody",
            (false, _) => $"waits at a join of its own on worker {Say.Whole(wait.HeldBy)}",
        };
        string worker = Say.Whole(wait.Worker);
        return $"Worker {worker} waits in {labels.LabelOf(wait.Task)}{line} for {child}, which {where}.";
    }
}
