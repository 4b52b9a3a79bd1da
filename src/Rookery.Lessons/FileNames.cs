using System.Text;

namespace Rookery.Lessons;

/// <summary>Which names of files a lesson may say.</summary>
public static class FileNames
{
    private const int LengthMax = 200;

    /// <summary>Whether a name stays within the lesson's folder, read on any system.</summary>
    /// <param name="name">Such as <c>count.fj</c> or <c>data/tiles.csv</c>.</param>
    public static bool IsInside(string name) =>
        name.Length is > 0 and <= LengthMax
        && !name.Any(c => c is '\\' or ':' or '*' or '?' or '"' or '<' or '>' or '|' or '%' || char.IsControl(c))
        && !name.StartsWith('/')
        && name.Split('/').All(part => part.Length > 0 && part != "." && part != ".." && !part.EndsWith('.'));

    /// <summary>A name as part of an address in a page.</summary>
    public static string ToAddress(string name) => string.Join('/', name.Split('/').Select(Uri.EscapeDataString));

    /// <summary>Bytes of a text file: UTF-8, with or without a byte order mark.</summary>
    internal static string TextOf(byte[] bytes)
    {
        string text = Encoding.UTF8.GetString(bytes);
        return text.StartsWith('\uFEFF') ? text[1..] : text;
    }
}
