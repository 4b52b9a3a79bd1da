using Rookery.Notation;

namespace Rookery.Traces.Files;

/// <summary>Finds the word of the trace format that an author most likely meant.</summary>
internal static class NearestWord
{
    /// <summary>
    /// The permitted word nearest to what was found; upper and lower case and <c>_</c> for <c>-</c> cost nothing. Null
    /// when nothing is near. <c>"jion-wait"</c> is near <c>join-wait</c>, and so is <c>"JOIN_WAIT"</c>.
    /// </summary>
    public static string? Of(string found, IEnumerable<string> permitted)
    {
        string plain = found.Trim().Replace('_', '-').ToLowerInvariant();
        string[] words = [.. permitted];
        return words.Contains(plain) ? plain : Suggestion.Nearest(plain, words);
    }
}
