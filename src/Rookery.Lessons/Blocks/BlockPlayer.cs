namespace Rookery.Lessons.Blocks;

/// <summary>The recorded run of a block, ready for the page's player: three small script files.</summary>
/// <param name="Talk">Times, sentences, kinds and lines of the steps, as JSON.</param>
/// <param name="Wide">Pictures for a wide page, as JSON.</param>
/// <param name="Narrow">Pictures for a phone, as JSON.</param>
/// <param name="First">Number of events before the first picture.</param>
/// <param name="Last">Number of events before the last picture, that step included.</param>
/// <param name="All">Number of events of the run.</param>
public sealed record BlockPlayer(string Talk, string Wide, string Narrow, int First, int Last, int All)
{
    /// <summary>Whether only a part of the run is in the page.</summary>
    public bool IsWindow => First > 0 || Last < All;
}
