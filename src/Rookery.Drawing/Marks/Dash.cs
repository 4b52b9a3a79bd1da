namespace Rookery.Drawing;

/// <summary>How a line is broken up, so that lines differ without colour.</summary>
public enum Dash : byte
{
    /// <summary>Unbroken.</summary>
    Solid,

    /// <summary>Long dashes.</summary>
    Dashed,

    /// <summary>Short dots.</summary>
    Dotted,
}
