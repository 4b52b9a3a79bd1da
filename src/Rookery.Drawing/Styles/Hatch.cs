namespace Rookery.Drawing;

/// <summary>A pattern over a fill, so that fills differ without colour.</summary>
public enum Hatch : byte
{
    /// <summary>Plain.</summary>
    None,

    /// <summary>Lines that rise to the right.</summary>
    Rising,

    /// <summary>Lines that fall to the right.</summary>
    Falling,

    /// <summary>Dots.</summary>
    Dots,

    /// <summary>Level lines.</summary>
    Level,

    /// <summary>Upright lines.</summary>
    Upright,
}
