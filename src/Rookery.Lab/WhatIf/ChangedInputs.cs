using System.Collections.Immutable;
using System.Globalization;
using Rookery.Lab.Runs;
using Rookery.Traces;

namespace Rookery.Lab.WhatIf;

/// <summary>Finds what two runs were made from differently.</summary>
internal static class ChangedInputs
{
    /// <summary>All that differs: program and data, workers, seed, options, costs, parameters.</summary>
    public static ImmutableArray<ChangedInput> Of(LabRun former, LabRun now)
    {
        (TraceInputs old, TraceInputs its) = (former.Trace.Inputs, now.Trace.Inputs);
        var found = new List<ChangedInput>();
        if (old.Source != its.Source)
            found.Add(new("program", "", ""));
        if (former.Inputs is { } before && now.Inputs is { } after && old.Source == its.Source
            && !before.Program.Data.SequenceEqual(after.Program.Data))
            found.Add(new("data", "", ""));
        Add(found, "workers", old.Workers, its.Workers);
        if (old.Cores != old.Workers || its.Cores != its.Workers)
            Add(found, "cores", old.Cores, its.Cores);
        Add(found, "seed", old.Seed, its.Seed);
        AddMaps(found, old.Scheduler, its.Scheduler, word => word);
        if (IsPatiencePlain(old) && IsPatiencePlain(its))
            found.RemoveAll(one => one.Name == "patience");
        AddMaps(found, old.Machine, its.Machine, Plain);
        if (old.TimeUnit != its.TimeUnit)
            found.Add(new("time-unit", old.TimeUnit, its.TimeUnit));
        AddMaps(found, old.Parameters, its.Parameters, Plain);
        return [.. found];
    }

    // It grows with the workers unless somebody chooses it.
    private static bool IsPatiencePlain(TraceInputs inputs) =>
        inputs.Option("patience", "") == Plain(2L * inputs.Workers);

    private static void Add(List<ChangedInput> found, string name, long former, long now)
    {
        if (former != now)
            found.Add(new(name, Plain(former), Plain(now)));
    }

    private static void AddMaps<T>(
        List<ChangedInput> found,
        ImmutableSortedDictionary<string, T> former,
        ImmutableSortedDictionary<string, T> now,
        Func<T, string> text)
    {
        foreach (string name in former.Keys.Union(now.Keys))
        {
            string before = former.TryGetValue(name, out T? old) ? text(old) : "";
            string after = now.TryGetValue(name, out T? its) ? text(its) : "";
            if (before != after)
                found.Add(new(name, before, after));
        }
    }

    private static string Plain(long value) => value.ToString(CultureInfo.InvariantCulture);
}
