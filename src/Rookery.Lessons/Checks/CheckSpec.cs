using System.Collections.Immutable;
using System.Globalization;
using Rookery.Checking;
using Rookery.Lessons.Yaml;

namespace Rookery.Lessons.Checks;

/// <summary>What a check is computed from, besides files.</summary>
internal sealed record CheckSpec
{
    /// <summary>The algorithms' files; empty for one that stands in the lesson.</summary>
    public required ImmutableArray<YamlScalar> Files { get; init; }

    /// <summary>An algorithm that stands in the lesson; null for files.</summary>
    public required YamlScalar? Text { get; init; }

    /// <summary>The scenario; null for all of each file.</summary>
    public required YamlScalar? Scenario { get; init; }

    /// <summary>The memory models, in the order of the lesson.</summary>
    public required ImmutableArray<MemoryModel> Models { get; init; }

    /// <summary>Most writes that wait; 0 for no bound.</summary>
    public required int BufferMax { get; init; }

    /// <summary>Whether states that cannot matter are left out.</summary>
    public required bool Reduces { get; init; }

    /// <summary>Most states of all searches together.</summary>
    public required long StatesMax { get; init; }

    /// <summary>What is shown.</summary>
    public required ImmutableSortedSet<CheckView> Show { get; init; }

    /// <summary>Whether the page has a player.</summary>
    public required bool HasPlayer { get; init; }

    /// <summary>Whether conditions speak of progress, so that it must be known.</summary>
    public required bool NeedsProgress { get; init; }

    /// <summary>Whether the lesson means to show a search that runs out of budget.</summary>
    public required bool ExpectsOutOfBudget { get; init; }

    /// <summary>Everything that the result depends on, besides files, as text.</summary>
    public string ToKey() => string.Join(
        '\n',
        [
            "check 1", string.Join('|', Files.Select(one => one.Text)), Text?.Text ?? "", Scenario?.Text ?? "",
            string.Join(',', Models), BufferMax.ToString(CultureInfo.InvariantCulture), Reduces.ToString(),
            StatesMax.ToString(CultureInfo.InvariantCulture), string.Join(',', Show), HasPlayer.ToString(),
            NeedsProgress.ToString(), ExpectsOutOfBudget.ToString(), "",
        ]);
}
