using System.Globalization;
using System.Text;


namespace Rookery.Lessons.Players;

/// <summary>Pictures of a player, kept as what changes from one to the next. Mutable.</summary>
/// <remarks>
/// A picture is the lines of its SVG, one element each. Lines are kept once, in a table; a picture is a list of numbers
/// that tells how to make it from the one before: <c>n ≥ 0</c> is line n of the table, <c>−n</c> copies the next n
/// lines
/// of the former picture, and <c>"n"</c>, as a text, passes n of them over. So a picture costs what it changes. Going
/// back or jumping starts at the nearest of the whole pictures that stand at each 64th place.
/// </remarks>
internal sealed class FrameTable
{
    /// <summary>Every so many pictures one is written whole.</summary>
    public const int WholeEvery = 64;

    // A line found far ahead is rather another one of the same look: what lies between would have to be told again.
    private const int ReachMax = 48;

    private readonly Dictionary<string, int> _numbers = new(StringComparer.Ordinal);
    private readonly List<string> _lines = [];
    private readonly List<string> _frames = [];
    private int[] _last = [];

    /// <summary>About how many bytes the pictures take so far.</summary>
    public int Bytes { get; private set; }

    /// <summary>Number of pictures.</summary>
    public int Count => _frames.Count;

    /// <summary>Adds a picture.</summary>
    /// <param name="svg">Its SVG, as the writer of figures writes it.</param>
    public void Add(string svg)
    {
        int[] frame = [.. svg.Split('\n', StringSplitOptions.RemoveEmptyEntries).Where(IsDrawn).Select(NumberOf)];
        string told = Tell(_frames.Count % WholeEvery == 0 ? [] : _last, frame);
        _frames.Add(told);
        Bytes += told.Length + 3;
        _last = frame;
    }

    /// <summary>The table and the pictures as JSON.</summary>
    public string ToJson(string width, string height)
    {
        var json = new StringBuilder();
        json.Append(CultureInfo.InvariantCulture, $"{{\"width\":{width},\"height\":{height},\"every\":{WholeEvery},");
        json.Append("\"lines\":[\n").AppendJoin(",\n", _lines.Select(PlayerJson.TextOf)).Append("],\"frames\":[\n");
        json.AppendJoin(",\n", _frames.Select(frame => $"[{frame}]"));
        return json.Append("]}").ToString();
    }

    // The frame of the document, its title and its description are the page's own; what is left are the elements.
    private static bool IsDrawn(string line) =>
        !line.StartsWith("<svg", StringComparison.Ordinal) && line != "</svg>"
        && !line.StartsWith("<title id", StringComparison.Ordinal)
            && !line.StartsWith("<desc", StringComparison.Ordinal);

    private int NumberOf(string line)
    {
        if (_numbers.TryGetValue(line, out int number))
            return number;
        _numbers.Add(line, _lines.Count);
        _lines.Add(line);
        Bytes += Encoding.UTF8.GetByteCount(line) + 16;
        return _lines.Count - 1;
    }

    private static string Tell(int[] before, int[] now)
    {
        var told = new List<string>();
        int from = 0, copied = 0;
        void EndCopy()
        {
            if (copied > 0)
                told.Add((-copied).ToString(CultureInfo.InvariantCulture));
            copied = 0;
        }

        foreach (int line in now)
        {
            int found = from < before.Length ? Array.IndexOf(before, line, from,
                Math.Min(ReachMax, before.Length - from)) : -1;
            if (found < 0)
            {
                EndCopy();
                told.Add(line.ToString(CultureInfo.InvariantCulture));
                continue;
            }

            if (found > from)
            {
                EndCopy();
                told.Add($"\"{(found - from).ToString(CultureInfo.InvariantCulture)}\"");
            }

            copied++;
            from = found + 1;
        }

        EndCopy();
        return string.Join(',', told);
    }
}
