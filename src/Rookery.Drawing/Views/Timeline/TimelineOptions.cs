namespace Rookery.Drawing;

/// <summary>What a timeline shows.</summary>
public sealed record TimelineOptions
{
    /// <summary>Size and heading.</summary>
    public Frame Frame { get; init; } = new();

    /// <summary>
    /// Whether what a page may want to select or to move is a group of its own with a target; false by default, since
    /// it makes the figure longer. docs/drawing.md lists the groups.
    /// </summary>
    public bool HasTargets { get; init; }

    /// <summary>First time shown, in the trace's unit; 0 by default. At least 0.</summary>
    public long From { get; init; }

    /// <summary>Last time shown, or null (default) for the end of the run; not before <see cref="From"/>.</summary>
    public long? To { get; init; }

    /// <summary>What the colour of computing says; <see cref="TimelineColours.Origin"/> by default.</summary>
    public TimelineColours Colours { get; init; } = TimelineColours.Origin;

    /// <summary>Whether steals are drawn as links from victim to thief; true by default.</summary>
    public bool ShowSteals { get; init; } = true;

    /// <summary>
    /// The most links drawn, 0 to 400; 60 by default. Links that would hide one another are
    /// left out, and two thirds when workers share rows.
    /// </summary>
    public int LinksMax { get; init; } = 60;

    /// <summary>
    /// Work T1 in the trace's unit for the line T1/P; null (default): the time that the workers computed.
    /// </summary>
    public long? WorkTicks { get; init; }

    /// <summary>Span Tinf in the trace's unit for its line; null (default) or 0: no such line.</summary>
    public long? SpanTicks { get; init; }
}
