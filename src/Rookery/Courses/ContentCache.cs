using System.Collections.Concurrent;
using System.Security.Cryptography;
using System.Text;

namespace Rookery.Courses;

/// <summary>Keeps what was computed, by what it was computed from: in memory, and on disk for the next time.</summary>
/// <remarks>
/// A key stands for everything that a value depends on, the program itself included, so nothing ever has to be thrown
/// away for being out of date. The folder may be deleted at any time. Safe to use from several threads and processes.
/// </remarks>
internal sealed class ContentCache
{
    /// <summary>When the folder holds more, the oldest files go: 512 MiB.</summary>
    private const long BytesMax = 512L << 20;

    /// <summary>Changes with every build of ours: another program, other results.</summary>
    private static readonly string Program = string.Join(
        ' ',
        new[]
        {
            typeof(ContentCache), typeof(Lessons.Lesson), typeof(Drawing.Scene), typeof(Simulation.Simulator),
            typeof(Traces.Trace), typeof(Programs.FjProgram), typeof(Notation.SourceText),
            typeof(Experiments.Subject), typeof(Checking.Checker),
        }.Select(type => type.Module.ModuleVersionId.ToString("N")));

    private readonly ConcurrentDictionary<string, byte[]> _memory = new(StringComparer.Ordinal);
    private readonly string? _folder;

    /// <summary>Uses a folder.</summary>
    /// <param name="folder">The folder; null to keep nothing for the next time.</param>
    public ContentCache(string? folder) => _folder = folder;

    /// <summary>The folder of this user; null when there is none.</summary>
    public static string? UsersFolder()
    {
        string home = Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData);
        return home.Length > 0 ? Path.Combine(home, "rookery", "computed") : null;
    }

    /// <summary>The value of a key; null when it has not been kept.</summary>
    public byte[]? Find(string kind, string key)
    {
        string name = NameOf(kind, key);
        if (_memory.TryGetValue(name, out byte[]? kept))
            return kept;
        if (_folder is null)
            return null;
        try
        {
            byte[] bytes = File.ReadAllBytes(PathOf(name));
            _memory.TryAdd(name, bytes);
            return bytes;
        }
        catch (Exception files) when (files is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>Keeps a value.</summary>
    public void Keep(string kind, string key, byte[] value)
    {
        string name = NameOf(kind, key);
        _memory[name] = value;
        if (_folder is null)
            return;
        try
        {
            string path = PathOf(name);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            string part = $"{path}.{Guid.NewGuid():N}.part";
            File.WriteAllBytes(part, value);
            File.Move(part, path, overwrite: true);
        }
        catch (Exception files) when (files is IOException or UnauthorizedAccessException)
        {
            // Without a folder to write to everything is computed anew the next time, and nothing else is lost.
        }
    }

    /// <summary>Deletes the oldest files when there are too many.</summary>
    public void Prune()
    {
        if (_folder is null || !Directory.Exists(_folder))
            return;
        try
        {
            FileInfo[] files = [.. new DirectoryInfo(_folder).EnumerateFiles("*", SearchOption.AllDirectories)];
            long bytes = files.Sum(file => file.Length);
            foreach (FileInfo file in files.OrderBy(file => file.LastWriteTimeUtc))
            {
                if (bytes <= BytesMax)
                    return;
                bytes -= file.Length;
                file.Delete();
            }
        }
        catch (Exception files) when (files is IOException or UnauthorizedAccessException)
        {
            // Somebody else prunes, too.
        }
    }

    private string PathOf(string name) => Path.Combine(_folder!, name[..2], name);

    private static string NameOf(string kind, string key) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{Program}\n{kind}\n{key}")));
}
