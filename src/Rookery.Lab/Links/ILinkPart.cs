namespace Rookery.Lab.Links;

/// <summary>
/// A part of the lab that keeps something of its own in links: a room's choices, a mode of the stage.
/// </summary>
/// <remarks>
/// Registered as a service under this interface; <see cref="LinkKeeper"/> does the rest. What is read comes from
/// strangers.
/// </remarks>
internal interface ILinkPart
{
    /// <summary>Its key in links: lower-case letters and hyphens, unlike every other.</summary>
    string Key { get; }

    /// <summary>What it shows has changed, so the address has to follow.</summary>
    event Action? LinkChanged;

    /// <summary>What it shows, as a short text; empty for what it begins with.</summary>
    string WriteLink();

    /// <summary>Shows what a link says; an empty text means what it begins with.</summary>
    /// <returns>Whether the text makes sense; when not, nothing has changed.</returns>
    bool ReadLink(string text);
}
