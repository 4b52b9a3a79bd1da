namespace Rookery.Drawing;

/// <summary>One line of text.</summary>
/// <param name="X">Where its start, middle or end is, as <see cref="Anchor"/> says.</param>
/// <param name="Y">Its baseline.</param>
/// <param name="Content">What it says; any characters, escaped when written.</param>
/// <param name="Size">Size of the font in pixels.</param>
public sealed record Text(double X, double Y, string Content, double Size) : Mark
{
    /// <summary>What it stands for.</summary>
    public Ink Ink { get; init; } = Role.Text;

    /// <summary>
    /// The fill that it stands on when that is not the paper: black or white, whichever reads better.
    /// </summary>
    public Ink Over { get; init; }

    /// <summary>Whether it is set bold.</summary>
    public bool IsBold { get; init; }

    /// <summary>Which end <see cref="X"/> is.</summary>
    public Anchor Anchor { get; init; }

    /// <summary>Whether it reads upwards, turned by a quarter about (X, Y).</summary>
    public bool IsUpright { get; init; }

    /// <summary>Width by the table of <see cref="FontWidths"/>, in pixels.</summary>
    public double Length => FontWidths.Measure(Content, Size, IsBold);

    /// <summary>From the height of capitals to the depth of descenders, as long as the table of widths says.</summary>
    public override Area Bounds
    {
        get
        {
            var length = Length;
            var back = Anchor switch { Anchor.Start => 0, Anchor.Middle => length / 2, Anchor.End => length };
            var (rise, drop) = (FontWidths.Rise * Size, FontWidths.Drop * Size);
            return IsUpright
                ? new(X - rise, Y + back - length, rise + drop, length)
                : new(X - back, Y - rise, length, rise + drop);
        }
    }
}
