namespace Rookery.Drawing;

/// <summary>What a figure of workers and deques shows.</summary>
public sealed record DequeOptions
{
    /// <summary>Size and heading.</summary>
    public Frame Frame { get; init; } = new();

    /// <summary>
    /// Whether what a page may want to select or to move is a group of its own with a target; false by default, since
    /// it makes the figure longer. docs/drawing.md lists the groups.
    /// </summary>
    public bool HasTargets { get; init; }

    /// <summary>Whether the sentence of the last event stands below; true by default.</summary>
    public bool ShowSentence { get; init; } = true;

    /// <summary>
    /// The most workers shown, 1 to 16; null (default): as many as find room. Others are summed up in a line.
    /// </summary>
    public int? WorkersMax { get; init; }

    /// <summary>A worker that must be among those shown; null (default): those of the last event are.</summary>
    public int? Focus { get; init; }

    /// <summary>
    /// The work that the largest square stands for, at least 0; null (default): that of the figure's largest task. Give
    /// several figures of one run the same, such as <see cref="DequeView.LargestQueued"/>, and their areas compare.
    /// </summary>
    public long? ScaleWork { get; init; }
}
