namespace Rookery.Lab.Work;

/// <summary>How fast work goes, and how long the rest of it will take.</summary>
/// <param name="start">The clock when it began, in milliseconds.</param>
internal sealed class WorkRate(double start)
{
    /// <summary>Pieces a second so far; 0 before a tenth of a second has passed.</summary>
    /// <param name="done">Pieces done.</param>
    /// <param name="now">The clock.</param>
    public double PerSecond(double done, double now) => now - start < 100 ? 0 : done * 1000 / (now - start);

    /// <summary>
    /// Seconds until all is done, if the rest goes like what was done; null when that is not yet known.
    /// </summary>
    /// <param name="done">Pieces done.</param>
    /// <param name="all">All pieces.</param>
    /// <param name="now">The clock.</param>
    public double? SecondsLeft(double done, double all, double now) =>
        done <= 0 || now - start < 250 ? null : (all - done) * (now - start) / done / 1000;
}
