using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Rookery.Lessons.Yaml;
using Rookery.Simulation;

namespace Rookery.Lessons.Exhibits;

/// <summary>What an exhibit is computed from, besides files.</summary>
internal sealed record ExhibitSpec
{
    /// <summary>The program's file.</summary>
    public required YamlScalar Program { get; init; }

    /// <summary>Values of parameters.</summary>
    public required ImmutableSortedDictionary<string, long> Set { get; init; }

    /// <summary>Where each parameter was set, for messages.</summary>
    public required YamlMap? SetBlock { get; init; }

    /// <summary>What random draws follow from.</summary>
    public required long Seed { get; init; }

    /// <summary>Workers, machine, scheduler.</summary>
    public required RunSettings Settings { get; init; }

    /// <summary>What the scheduler is called: <c>work-stealing</c>, or that and what was changed.</summary>
    public required string SchedulerName { get; init; }

    /// <summary>What the machine is called.</summary>
    public required string MachineName { get; init; }

    /// <summary>What is shown.</summary>
    public required ImmutableArray<ExhibitView> Show { get; init; }

    /// <summary>The moments, by name; empty for the most telling one.</summary>
    public required ImmutableArray<YamlScalar> Stops { get; init; }

    /// <summary>The steps that the player carries; null for a choice of the exhibit's own.</summary>
    public required (int First, int Last)? Steps { get; init; }

    /// <summary>Whether the page has a player.</summary>
    public required bool HasPlayer { get; init; }

    /// <summary>Everything that the result depends on, besides files, as text.</summary>
    public string ToKey()
    {
        var key = new StringBuilder("exhibit 1\n");
        void Add(string name, object value) =>
            key.Append(CultureInfo.InvariantCulture,
                $"{name}={value.ToString()!.Replace("\n", "\\n", StringComparison.Ordinal)}\n");
        Add("program", Program.Text);
        foreach ((string name, long value) in Set)
            Add("set " + name, value);
        Add("seed", Seed);
        Add("workers", Settings.Workers);
        foreach ((string name, string word) in Settings.Scheduler.ToWords(Settings.Workers))
            Add("scheduler " + name, word);
        foreach ((string name, long cost) in Settings.Machine.ToCosts())
            Add("machine " + name, cost);
        Add("cores", Settings.Cores);
        Add("unit", Settings.Machine.TimeUnit);
        Add("names", SchedulerName + "|" + MachineName);
        Add("show", string.Join(',', Show));
        Add("stops", string.Join('|', Stops.Select(stop => stop.Text)));
        Add("steps", Steps is { } steps ? $"{steps.First}..{steps.Last}" : "");
        Add("player", HasPlayer);
        return key.ToString();
    }
}
