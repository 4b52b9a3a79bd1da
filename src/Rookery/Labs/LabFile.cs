using System.Security.Cryptography;

namespace Rookery.Labs;

/// <summary>
/// One file of the published lab, perhaps with compressed forms of it beside it. For several threads.
/// </summary>
/// <param name="path">Where it lies.</param>
/// <param name="forms">The compressed forms that lie beside it, by ending: <c>.br</c>, <c>.gz</c>.</param>
internal sealed class LabFile(string path, IReadOnlySet<string> forms)
{
    private static readonly (string Encoding, string Ending)[] Encodings = [("br", ".br"), ("gzip", ".gz")];

    private readonly Lazy<string> _tag = new(() =>
        Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(path)).AsSpan(0, 12)));

    /// <summary>Its bytes in the shortest form that a reader accepts (RFC 9110, section 12.5.3).</summary>
    /// <param name="accepted">The header Accept-Encoding; empty for none.</param>
    /// <returns>The file to send, the encoding's name (empty for none), and an entity tag of its own.</returns>
    public (string Path, string Encoding, string Tag) FormFor(string accepted)
    {
        foreach ((string encoding, string ending) in Encodings)
        {
            if (forms.Contains(ending) && Accepts(accepted, encoding))
                return (path + ending, encoding, $"\"{_tag.Value}{ending}\"");
        }

        return (path, "", $"\"{_tag.Value}\"");
    }

    private static bool Accepts(string accepted, string encoding)
    {
        foreach (string one in accepted.Split(','))
        {
            string[] words = one.Split(';', StringSplitOptions.TrimEntries);
            if (!words[0].Equals(encoding, StringComparison.OrdinalIgnoreCase))
                continue;
            string quality = words.Skip(1).FirstOrDefault(word =>
                word.StartsWith("q=", StringComparison.OrdinalIgnoreCase)) ?? "q=1";
            return quality[2..].Any(digit => digit is >= '1' and <= '9');
        }

        return false;
    }
}
