namespace Rookery.Drawing;

/// <summary>Which part of a text its x is.</summary>
public enum Anchor : byte
{
    /// <summary>Text begins there.</summary>
    Start,

    /// <summary>Text is centred there.</summary>
    Middle,

    /// <summary>Text ends there.</summary>
    End,
}
