using System.Collections.Immutable;

namespace Rookery.Lessons;

/// <summary>The kinds of pictures that a lesson may show.</summary>
public static class ImageKinds
{
    /// <summary>Their endings.</summary>
    public static ImmutableArray<string> Endings { get; } = [".png", ".jpg", ".jpeg", ".gif", ".webp", ".svg"];

    /// <summary>Whether a name has the ending of a picture.</summary>
    /// <param name="name">A file's name.</param>
    public static bool IsImage(string name) =>
        Endings.Any(ending => name.EndsWith(ending, StringComparison.OrdinalIgnoreCase));

    /// <summary>Whether bytes begin as a picture of that ending does, so that nothing else passes for one.</summary>
    /// <param name="name">The file's name.</param>
    /// <param name="bytes">The file's bytes.</param>
    public static bool Fits(string name, ReadOnlySpan<byte> bytes)
    {
        string ending = name[name.LastIndexOf('.')..].ToLowerInvariant();
        return ending switch
        {
            ".png" => bytes.StartsWith((ReadOnlySpan<byte>)[0x89, 0x50, 0x4E, 0x47]),
            ".jpg" or ".jpeg" => bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF]),
            ".gif" => bytes.StartsWith("GIF8"u8),
            ".webp" => bytes.StartsWith("RIFF"u8) && bytes.Length > 12 && bytes[8..12].SequenceEqual("WEBP"u8),
            _ => bytes.IndexOf("<svg"u8) >= 0,
        };
    }
}
