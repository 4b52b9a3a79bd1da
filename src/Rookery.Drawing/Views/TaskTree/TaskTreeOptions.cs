namespace Rookery.Drawing;

/// <summary>What a task tree shows.</summary>
public sealed record TaskTreeOptions
{
    /// <summary>Size and heading.</summary>
    public Frame Frame { get; init; } = new();

    /// <summary>The task at the top; null (default): the root of the run.</summary>
    public int? Root { get; init; }

    /// <summary>The most levels shown, 1 to 40; null (default): as many as find room.</summary>
    public int? LevelsMax { get; init; }

    /// <summary>Whether tasks have their labels where there is room; true by default.</summary>
    public bool ShowLabels { get; init; } = true;
}
