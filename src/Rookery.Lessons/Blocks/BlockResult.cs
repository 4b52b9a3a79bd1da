using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace Rookery.Lessons.Blocks;

/// <summary>What a block came to: everything that the page needs of it. Plain data: it may be kept on disk.</summary>
public sealed record BlockResult
{
    /// <summary>Its numbers, for formulas.</summary>
    public ImmutableArray<MeasureValue> Measures { get; init; } = [];

    /// <summary>Its figures, in the order of the page.</summary>
    public ImmutableArray<BlockFigure> Figures { get; init; } = [];

    /// <summary>Number of events before its first moment; 0 when it shows none.</summary>
    [JsonIgnore]
    public int FirstStep => Math.Max(0, Figures.FirstOrDefault(figure => figure.Step >= 0)?.Step ?? 0);

    /// <summary>Its tables.</summary>
    public ImmutableArray<BlockTable> Tables { get; init; } = [];

    /// <summary>Its recorded run; null when it has none.</summary>
    public BlockPlayer? Player { get; init; }

    /// <summary>A line that says how it was made, such as "4 workers, work-stealing, unit machine, seed 7".</summary>
    public string MadeFrom { get; init; } = "";

    /// <summary>The text of its program; empty when the page does not show it.</summary>
    public string Listing { get; init; } = "";

    /// <summary>Its answer in a word or two, such as <c>Supported.</c>; empty when it has none.</summary>
    public string Answer { get; init; } = "";

    /// <summary>A sentence with its answer: a claim's verdict; empty when it has none.</summary>
    public string Verdict { get; init; } = "";
}
