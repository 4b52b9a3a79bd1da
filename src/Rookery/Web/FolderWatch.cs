namespace Rookery.Web;

/// <summary>Says when it is worth looking at a folder again.</summary>
/// <remarks>
/// The system's word comes at once and costs nothing while nothing happens, but not from every kind of disk. So there
/// is a look now and then without word; where no word can be had, a few times a second.
/// </remarks>
internal sealed class FolderWatch : IDisposable
{
    /// <summary>The system keeps a list of every folder below; a tree of more is looked at instead.</summary>
    private const int FoldersMax = 200;

    /// <summary>
    /// Between looks without word: an edit on a disk that sends none shows within a second all the same.
    /// </summary>
    private static readonly TimeSpan Seldom = TimeSpan.FromMilliseconds(800);

    private static readonly TimeSpan Often = TimeSpan.FromMilliseconds(250);

    /// <summary>One saving brings several words: truncated, written, renamed.</summary>
    private static readonly TimeSpan Settled = TimeSpan.FromMilliseconds(40);

    private readonly SemaphoreSlim _word = new(0);
    private readonly FileSystemWatcher? _system;
    private volatile bool _isDeaf;

    /// <summary>Begins to listen.</summary>
    /// <param name="folder">A folder; what lies below it counts too.</param>
    public FolderWatch(string folder)
    {
        _system = Listen(folder);
        _isDeaf = _system is null;
    }

    /// <summary>Ends when it is worth looking.</summary>
    public async Task Wait(CancellationToken stop)
    {
        if (!await _word.WaitAsync(_isDeaf ? Often : Seldom, stop))
            return;
        do
        {
            await Task.Delay(Settled, stop);
        }
        while (await Drain());
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _system?.Dispose();
        _word.Dispose();
    }

    private async Task<bool> Drain()
    {
        bool isMore = false;
        while (await _word.WaitAsync(TimeSpan.Zero))
            isMore = true;
        return isMore;
    }

    private FileSystemWatcher? Listen(string folder)
    {
        FileSystemWatcher? system = null;
        try
        {
            var all = new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = 0 };
            if (Directory.EnumerateDirectories(folder, "*", all).Take(FoldersMax).Count() == FoldersMax)
                return null;
            system = new FileSystemWatcher(folder) { IncludeSubdirectories = true };
            system.Changed += (_, _) => _word.Release();
            system.Created += (_, _) => _word.Release();
            system.Deleted += (_, _) => _word.Release();
            system.Renamed += (_, _) => _word.Release();
            system.Error += (_, _) => _isDeaf = true;
            system.EnableRaisingEvents = true;
            return system;
        }
        catch (Exception files) when (files is IOException or UnauthorizedAccessException or ArgumentException
            or PlatformNotSupportedException)
        {
            // The system has no room for another listener: looking works everywhere.
            system?.Dispose();
            return null;
        }
    }
}
