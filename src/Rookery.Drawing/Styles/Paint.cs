namespace Rookery.Drawing;

/// <summary>How an area is filled.</summary>
/// <param name="Ground">Its colour.</param>
/// <param name="Hatch">The pattern over it.</param>
/// <param name="HatchColour">Colour of the pattern; without meaning for <see cref="Hatch.None"/>.</param>
public readonly record struct Paint(Colour Ground, Hatch Hatch = Hatch.None, Colour HatchColour = default)
{
    /// <summary>Black or white: the one whose weakest contrast against ground and pattern is the stronger.</summary>
    public Colour TextColour => WeakestContrast(Colour.Black) >= WeakestContrast(Colour.White)
        ? Colour.Black
        : Colour.White;

    /// <summary>The weaker of the contrasts of a colour against ground and pattern.</summary>
    public double WeakestContrast(Colour colour)
    {
        var onGround = Colour.Contrast(colour, Ground);
        return Hatch == Hatch.None ? onGround : Math.Min(onGround, Colour.Contrast(colour, HatchColour));
    }
}
