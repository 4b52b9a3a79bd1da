using Rookery.CommandLine;
using Rookery.Terminal;

namespace Rookery.Tests;

/// <summary>Runs the command line in this process, in a folder of its own that goes away afterwards.</summary>
internal sealed class TestRun : IDisposable
{
    public const string Count = """
        param grain = 10 in 1..1000
        task count(lo, hi)
            if hi - lo <= grain
                work hi - lo
            else
                let mid = lo + (hi - lo) / 2
                fork count(lo, mid)
                call count(mid, hi)
                join
                work 2
        start count(0, 200)
        """;

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("rookery-test-");

    public string Folder => _folder.FullName;

    public string Output { get; private set; } = "";

    public string Errors { get; private set; } = "";

    public string PathOf(string name) => Path.Combine(Folder, name);

    /// <summary>Puts a file there.</summary>
    public string Put(string name, string text)
    {
        string path = PathOf(name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
        return path;
    }

    /// <summary>Runs the words; what was written is in <see cref="Output"/> and <see cref="Errors"/>.</summary>
    public int Run(params string[] words) => Run(CancellationToken.None, words);

    public int Run(CancellationToken stop, params string[] words)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var errors = new StringWriter { NewLine = "\n" };
        var app = new App(new AppConsole(output, errors), "rookery", Folder, TimeProvider.System, stop);
        int code = (int)new CommandLineApp().Run(words, app);
        (Output, Errors) = (output.ToString(), errors.ToString());
        return code;
    }

    /// <summary>What lies in the folder, names only, in order.</summary>
    public string[] Files() =>
    [
        .. Directory.EnumerateFileSystemEntries(Folder).Select(path => Path.GetFileName(path))
            .Order(StringComparer.Ordinal),
    ];

    public void Dispose() => _folder.Delete(recursive: true);
}
