namespace Rookery.Drawing;

/// <summary>A steal as a link between two rows of a timeline.</summary>
/// <param name="Time">When the task moved.</param>
/// <param name="FromRow">Row of the victim.</param>
/// <param name="ToRow">Row of the thief.</param>
/// <param name="Step">Step of the steal.</param>
internal readonly record struct Link(long Time, int FromRow, int ToRow, int Step)
{
    /// <summary>Whether it passes over a row that is neither end.</summary>
    public bool Crosses(int row) => row > Math.Min(FromRow, ToRow) && row < Math.Max(FromRow, ToRow);

    /// <summary>Whether the two share more than one row.</summary>
    public bool Overlaps(Link other) =>
        Math.Min(FromRow, ToRow) < Math.Max(other.FromRow, other.ToRow)
        && Math.Min(other.FromRow, other.ToRow) < Math.Max(FromRow, ToRow);
}
