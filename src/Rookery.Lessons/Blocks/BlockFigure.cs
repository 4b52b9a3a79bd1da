namespace Rookery.Lessons.Blocks;

/// <summary>A figure that a block made, in the sizes that its uses need. Plain data: it may be kept on disk.</summary>
public sealed record BlockFigure
{
    /// <summary>Begins every id of an SVG for a page; the page puts one of its own in its place.</summary>
    public const string IdPrefix = "rookery-figure-id-";

    /// <summary>What it shows in a file's name: <c>deques-1</c>, <c>timeline</c>.</summary>
    public required string Id { get; init; }

    /// <summary>What it shows, as one line.</summary>
    public required string Title { get; init; }

    /// <summary>What there is to see, in words: the text alternative.</summary>
    public required string Description { get; init; }

    /// <summary>What happens at its moment, as a lecturer says it: goes into the notes of a slide.</summary>
    public string Narration { get; init; } = "";

    /// <summary>The moment's name, such as <c>first steal</c>; empty for figures of a whole run.</summary>
    public string Moment { get; init; } = "";

    /// <summary>Number of events that have happened, for the player to jump to; -1 for figures of a whole
    /// run.</summary>
    public int Step { get; init; } = -1;

    /// <summary>SVG of 1,600 by 900 pixels for slides and downloads, with its heading.</summary>
    public required string Slide { get; init; }

    /// <summary>SVG for a page on a laptop or a projector.</summary>
    public required string Wide { get; init; }

    /// <summary>SVG for a phone held upright.</summary>
    public required string Narrow { get; init; }
}
