using System.Collections.Immutable;
using Rookery.Lab.Runs;
using Rookery.Traces;
using Rookery.Traces.Measuring;

namespace Rookery.Lab.WhatIf;

/// <summary>What differs between two runs: their inputs, their measures, and from where on they part.</summary>
/// <remarks>
/// Everything is exact: differences are computed from whole numbers, and what is rounded is only its showing. Times are
/// compared when both runs have one unit.
/// </remarks>
internal sealed class RunDifference
{
    /// <summary>How many events are compared one by one at the most: some hundredths of a second in a page.</summary>
    public const int ComparedMax = 100_000;

    /// <summary>How many measures are told besides the makespan.</summary>
    private const int ToldMax = 2;

    // What tells most about a scheduler. Others follow from these, or say the same.
    private static readonly ImmutableArray<string> s_telling =
    [
        "work", "steals", "probes", "lostRaces", "idleWhileTasksWaited", "liveTasks", "deepestDeque", "sleeps",
        "deviations",
    ];

    private RunDifference(LabRun former, LabRun now)
    {
        (Former, Now) = (former, now);
        HasOneUnit = former.Trace.Inputs.TimeUnit == now.Trace.Inputs.TimeUnit;
        Measures = [.. MeasureNames.All.Select(Compare)];
        Inputs = ChangedInputs.Of(former, now);
        (AreSame, FirstDifference) = FindFirst(former.Trace, now.Trace);
        Told = [.. TellMost()];
    }

    /// <summary>The run before.</summary>
    public LabRun Former { get; }

    /// <summary>The run shown.</summary>
    public LabRun Now { get; }

    /// <summary>Whether times of both are in one unit.</summary>
    public bool HasOneUnit { get; }

    /// <summary>All measures, in the order of docs/measures.md.</summary>
    public ImmutableArray<MeasureDifference> Measures { get; }

    /// <summary>What the runs were made from differently.</summary>
    public ImmutableArray<ChangedInput> Inputs { get; }

    /// <summary>Whether both runs are the same, event for event.</summary>
    public bool AreSame { get; }

    /// <summary>The first step at which they differ; null when they do not, or not within
    /// <see cref="ComparedMax"/> events.</summary>
    public int? FirstDifference { get; }

    /// <summary>The measures that tell most of what changed, besides the makespan; the most telling first.</summary>
    public ImmutableArray<MeasureDifference> Told { get; }

    /// <summary>The makespans.</summary>
    public MeasureDifference Makespan => Find("makespan");

    /// <summary>Compares two runs.</summary>
    public static RunDifference Between(LabRun former, LabRun now) => new(former, now);

    /// <summary>The measure of that name.</summary>
    public MeasureDifference Find(string name) => Measures.First(one => one.Measure.Name == name);

    private MeasureDifference Compare(NamedMeasure measure) => new(
        measure,
        measure.ValueOf(Former.Measures, Former.Trace.Inputs.Starved),
        measure.ValueOf(Now.Measures, Now.Trace.Inputs.Starved),
        HasOneUnit || !measure.IsTime);

    // A change counts by its factor, so that 3 steals more tell much where there were 2 and nothing where there were
    // 2,000; small numbers are damped, since 1 instead of 0 is no change without end. Other work means another
    // program, which explains all the rest: it comes first.
    private IEnumerable<MeasureDifference> TellMost() => s_telling
        .Select(Find)
        .Where(one => one.HasBoth && one.Sign != 0)
        .OrderByDescending(one => one.Measure.Name == "work" ? double.MaxValue : WeightOf(one))
        .Take(ToldMax);

    private double WeightOf(MeasureDifference one)
    {
        double damping = one.Measure.IsTime
            ? 1 + (0.02 * Now.Measures.Cores * Math.Max(Former.Trace.Makespan, Now.Trace.Makespan))
            : 3;
        return Math.Abs(Math.Log((one.Now.ToDouble() + damping) / (one.Former.ToDouble() + damping)));
    }

    private static (bool AreSame, int? First) FindFirst(Trace former, Trace now)
    {
        int common = Math.Min(former.Count, now.Count);
        int end = Math.Min(common, ComparedMax);
        for (int step = 0; step < end; step++)
        {
            if (former[step] != now[step])
                return (false, step);
        }

        if (end < common)
            return (false, null);
        return former.Count == now.Count ? (true, null) : (false, common);
    }
}
