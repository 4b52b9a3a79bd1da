using System.Text.Encodings.Web;
using System.Text.Json;

namespace Rookery.Lessons.Players;

/// <summary>Texts as JSON for the player's files.</summary>
/// <remarks>They are scripts of their own, never inside a page, so letters and signs may stay what they are.</remarks>
internal static class PlayerJson
{
    /// <summary>A text with its quotes.</summary>
    public static string TextOf(string text) =>
        $"\"{JsonEncodedText.Encode(text, JavaScriptEncoder.UnsafeRelaxedJsonEscaping)}\"";
}
