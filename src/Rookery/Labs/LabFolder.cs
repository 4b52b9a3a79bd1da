using System.Collections.Frozen;
using System.Text.RegularExpressions;

namespace Rookery.Labs;

/// <summary>The published lab as a folder of plain files, beside the program or where the environment says.</summary>
/// <remarks>
/// Its files are listed once, by name; whatever is asked for is looked up in that list and nowhere else, so no address
/// leads out of the folder. Immutable, for several threads.
/// </remarks>
internal sealed partial class LabFolder
{
    /// <summary>Names the folder, for a program that was built without the lab.</summary>
    public const string Variable = "ROOKERY_LAB";

    /// <summary>The page that begins it.</summary>
    public const string First = "index.html";

    private const int FilesMax = 5_000;

    private static readonly string[] Endings = [".br", ".gz"];

    private readonly FrozenDictionary<string, LabFile> _files;

    private LabFolder(string path, FrozenDictionary<string, LabFile> files, string[] names, long bytes)
    {
        (Path, _files, Names, Bytes) = (path, files, names, bytes);
        string first = File.ReadAllText(System.IO.Path.Combine(path, First));
        Policy = PolicyInPage().Match(first).Groups[1].Value;
        Written = WrittenAt(path);
    }

    /// <summary>Where the lab is, or would be.</summary>
    public static string Place => Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } told
        ? told
        : System.IO.Path.Combine(AppContext.BaseDirectory, "lab");

    /// <summary>Whether there is one, or will be while lessons are served.</summary>
    public static bool IsExpected =>
        File.Exists(System.IO.Path.Combine(Place, First)) || File.Exists(Place + "-begun");

    /// <summary>Where it lies.</summary>
    public string Path { get; }

    /// <summary>The names of all its files, compressed forms included, with <c>/</c> between folders.</summary>
    public string[] Names { get; }

    /// <summary>Bytes of all of them together.</summary>
    public long Bytes { get; }

    /// <summary>What the page itself permits: its content security policy, word for word.</summary>
    public string Policy { get; }

    /// <summary>When its first page was written: another time is another lab.</summary>
    public DateTime Written { get; }

    /// <summary>Looks for it.</summary>
    /// <returns>The lab; null when there is none.</returns>
    public static LabFolder? Find() => At(Place);

    /// <summary>Lists a folder.</summary>
    /// <returns>The lab; null when the folder holds none.</returns>
    public static LabFolder? At(string path)
    {
        if (!File.Exists(System.IO.Path.Combine(path, First)))
            return null;
        var lies = new DirectoryInfo(path).EnumerateFiles("*", SearchOption.AllDirectories)
            .Where(file => file.LinkTarget is null)
            .Take(FilesMax)
            .ToDictionary(
                file => System.IO.Path.GetRelativePath(path, file.FullName).Replace('\\', '/'), file => file.Length,
                StringComparer.Ordinal);
        string[] names = [.. lies.Keys.Order(StringComparer.Ordinal)];
        var files = names.Where(name => !IsForm(name, lies)).ToFrozenDictionary(
            name => name,
            name => new LabFile(System.IO.Path.Combine(path, name), FormsOf(name, lies)), StringComparer.Ordinal);
        return new(path, files, names, lies.Values.Sum());
    }

    /// <summary>One of its files.</summary>
    /// <param name="name">Such as <c>_framework/dotnet.js</c>; empty for the first page.</param>
    /// <returns>The file; null when there is none of that name.</returns>
    public LabFile? FileOf(string name) => _files.GetValueOrDefault(name.Length == 0 ? First : name);

    /// <summary>Whether another lab lies there by now, or none.</summary>
    public bool IsOld() => Written != WrittenAt(Path);

    /// <summary>Copies all its files.</summary>
    /// <param name="folder">Where to; made when it is not there.</param>
    /// <param name="stop">Stops between two files.</param>
    /// <returns>Number of files.</returns>
    public int CopyTo(string folder, CancellationToken stop)
    {
        foreach (string name in Names)
        {
            stop.ThrowIfCancellationRequested();
            string target = System.IO.Path.Combine(folder, name);
            Directory.CreateDirectory(System.IO.Path.GetDirectoryName(target)!);
            File.Copy(System.IO.Path.Combine(Path, name), target, overwrite: true);
        }

        return Names.Length;
    }

    private static bool IsForm(string name, Dictionary<string, long> lies) =>
        System.IO.Path.GetExtension(name) is ".br" or ".gz" && lies.ContainsKey(name[..^3]);

    private static HashSet<string> FormsOf(string name, Dictionary<string, long> lies) =>
        [.. Endings.Where(ending => lies.ContainsKey(name + ending))];

    private static DateTime WrittenAt(string path) =>
        File.GetLastWriteTimeUtc(System.IO.Path.Combine(path, First));

    [GeneratedRegex("http-equiv=\"Content-Security-Policy\" content=\"([^\"]*)\"")]
    private static partial Regex PolicyInPage();
}
