using System.Collections.Immutable;

namespace Rookery.Drawing;

/// <summary>What a comparison is drawn from.</summary>
/// <remarks>Equality compares arrays by reference.</remarks>
public sealed record ComparisonData
{
    /// <summary>The most series that can be told apart.</summary>
    public const int SeriesMax = 6;

    /// <summary>The heading: what is compared.</summary>
    public required string Title { get; init; }

    /// <summary>The line below: how many runs, what the interval is.</summary>
    public required string Subtitle { get; init; }

    /// <summary>What is measured, with its unit.</summary>
    public required string Measure { get; init; }

    /// <summary>What the columns are levels of; empty when they are names.</summary>
    public string ColumnsAre { get; init; } = "";

    /// <summary>Names of the columns, from left to right.</summary>
    public required ImmutableArray<string> Columns { get; init; }

    /// <summary>Names of the series, one to <see cref="SeriesMax"/>; one empty name for a single series.</summary>
    public required ImmutableArray<string> Series { get; init; }

    /// <summary>The treatments that were run, at most one for a column and a series.</summary>
    public required ImmutableArray<ComparisonGroup> Groups { get; init; }

    /// <summary>
    /// Whether the runs of one seed are joined from the first column to the second: for two columns and one series.
    /// </summary>
    public bool ArePaired { get; init; }

    /// <summary>A verdict or other sentence below the figure; empty for none.</summary>
    public string Finding { get; init; } = "";
}
