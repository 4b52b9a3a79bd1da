using System.Text;
using Rookery.Notation;

namespace Rookery.Lessons.Tests;

/// <summary>A lesson's files in memory.</summary>
internal sealed class MemoryFiles : ILessonFiles
{
    public const string Count = """
        param grain = 25 in 1..200
        task count(lo, hi)
            if hi - lo <= grain
                work hi - lo
            else
                let mid = lo + (hi - lo) / 2
                fork count(lo, mid)
                call count(mid, hi)
                join
                work 4
        start count(0, 200)
        """;

    private readonly SortedDictionary<string, byte[]> _files = new(StringComparer.Ordinal);

    public MemoryFiles() => Put("count.fj", Count);

    /// <summary>Every name that was asked for, in order.</summary>
    public List<string> Asked { get; } = [];

    public MemoryFiles Put(string name, string text) => Put(name, Encoding.UTF8.GetBytes(text));

    public MemoryFiles Put(string name, byte[] bytes)
    {
        _files[name] = bytes;
        return this;
    }

    public byte[]? Read(string file, int bytesMax)
    {
        Asked.Add(file);
        if (_files.TryGetValue(file, out byte[]? bytes) && bytes.Length > bytesMax)
            throw new InputException(new Diagnostic("XX001", default, $"'{file}' is too large.", "", true));
        return bytes;
    }

    public TextReader? Open(string file)
    {
        Asked.Add(file);
        return _files.TryGetValue(file, out byte[]? bytes) ? new StringReader(Encoding.UTF8.GetString(bytes)) : null;
    }

    public IEnumerable<string> Names() => _files.Keys;
}
