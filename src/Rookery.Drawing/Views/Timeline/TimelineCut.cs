namespace Rookery.Drawing;

/// <summary>A window in time cut into slices of equal length.</summary>
/// <param name="From">Its beginning.</param>
/// <param name="To">Its end.</param>
/// <param name="Slices">Number of slices.</param>
/// <param name="WorkersInRow">How many workers share a row.</param>
internal readonly record struct TimelineCut(long From, long To, int Slices, int WorkersInRow)
{
    /// <summary>When a slice begins, or the last one ends.</summary>
    public double TimeAt(int slice) => From + ((double)(To - From) * slice / Slices);

    /// <summary>Number of workers in a row: the last may have fewer.</summary>
    public int WorkersIn(int row, int workers) => Math.Min(WorkersInRow, workers - (row * WorkersInRow));
}
