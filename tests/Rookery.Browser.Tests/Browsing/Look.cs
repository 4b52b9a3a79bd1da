using Microsoft.Playwright;

namespace Rookery.Browser.Tests.Browsing;

/// <summary>How a reader looks at a page: the size of the window, a light or a dark room.</summary>
/// <param name="Width">Of the window, in CSS pixels.</param>
/// <param name="Height">Of the window, in CSS pixels.</param>
/// <param name="Theme">What the reader's system prefers.</param>
/// <param name="Motion">Whether the reader asked for less motion.</param>
public sealed record Look(
    int Width, int Height, ColorScheme Theme = ColorScheme.Light, ReducedMotion Motion = ReducedMotion.NoPreference)
{
    /// <summary>The projector of a lecture hall.</summary>
    public static readonly Look Hall = new(1920, 1080);

    /// <summary>A small notebook.</summary>
    public static readonly Look Notebook = new(1366, 768);

    /// <summary>A phone held upright.</summary>
    public static readonly Look Phone = new(390, 844);

    /// <summary>The same in a dark room.</summary>
    public Look Dark() => this with { Theme = ColorScheme.Dark };

    /// <inheritdoc/>
    public override string ToString() => $"{Width}x{Height} {Theme}";
}
