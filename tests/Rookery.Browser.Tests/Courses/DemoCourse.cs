using Rookery.Testing;

namespace Rookery.Browser.Tests.Courses;

/// <summary>The demo course as <c>publish</c> makes it, once a run, on a web server and on disk.</summary>
public sealed class DemoCourse : IAsyncDisposable
{
    private readonly TempFolder _folder = new();
    private readonly Lazy<Task<StaticSite>> _site;

    /// <summary>Builds nothing before somebody asks.</summary>
    public DemoCourse() => _site = new(Build);

    /// <summary>The pages of the course, from its lesson files: <c>index.html</c> first.</summary>
    public static IReadOnlyList<string> Pages { get; } =
    [
        "index.html",
        .. Directory.EnumerateFiles(RepositoryFile.At("lessons"), "??-*.md").Order(StringComparer.Ordinal)
            .Select(file => Path.GetFileNameWithoutExtension(file) + ".html"),
    ];

    /// <summary>The folder it was published into.</summary>
    public async Task<string> Folder()
    {
        await _site.Value;
        return _folder["site"];
    }

    /// <summary>The address of a page on a web server.</summary>
    public async Task<Uri> Served(string page) => new((await _site.Value).Address, page);

    /// <summary>The address of a page as a double click opens it.</summary>
    public async Task<Uri> OnDisk(string page) => new(Path.Combine(await Folder(), page));

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (_site.IsValueCreated)
            await (await _site.Value).DisposeAsync();
        _folder.Dispose();
    }

    // What was computed is kept beside the tests by its content, the program's own included.
    private async Task<StaticSite> Build()
    {
        string computed = Path.Combine(AppContext.BaseDirectory, "computed");
        await RookeryProcess.Run(
            "publish", RepositoryFile.At("lessons"), "--out", _folder["site"], "--cache", computed);
        return await StaticSite.Of(_folder["site"]);
    }
}
