using System.Text.RegularExpressions;

namespace Rookery.Browser.Tests.Courses;

/// <summary><c>rookery serve</c>, as a process.</summary>
internal sealed partial class LiveSite : IAsyncDisposable
{
    private readonly RookeryProcess _process;

    private LiveSite(RookeryProcess process, Uri address) => (_process, Address) = (process, address);

    /// <summary>Where it is; ends in a slash.</summary>
    public Uri Address { get; }

    /// <summary>Serves a lesson or a folder, and waits until it says where.</summary>
    public static async Task<LiveSite> Of(string path)
    {
        RookeryProcess process = RookeryProcess.Start("serve", path, "--no-cache");
        string line = await process.Output.ReadLineAsync() ?? "";
        return new(process, new(ToldAddress().Match(line).Value));
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => _process.DisposeAsync();

    [GeneratedRegex("http://[0-9.:]+/")]
    private static partial Regex ToldAddress();
}
