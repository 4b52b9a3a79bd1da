using Rookery.Lab.Browser;

namespace Rookery.Lab.Tests;

/// <summary>A page without a browser: keeps what it was told, answers what a test laid in.</summary>
internal sealed class RecordingPage : IPage
{
    /// <summary>The last picture of each element.</summary>
    public Dictionary<string, string> Drawn { get; } = new(StringComparer.Ordinal);

    /// <summary>The words on the root element.</summary>
    public HashSet<string> Modes { get; } = new(StringComparer.Ordinal);

    /// <summary>The element that was last given the focus.</summary>
    public string Focused { get; private set; } = "";

    public List<string> Fragments { get; } = [];

    public Dictionary<string, string> Files { get; } = new(StringComparer.Ordinal);

    public string Copied { get; private set; } = "";

    public List<(string Name, byte[] Bytes)> Saved { get; } = [];

    public List<(string Id, bool IsOpen)> Dialogs { get; } = [];

    public int Breaths { get; private set; }

    /// <summary>What happens whenever long work lets the page answer.</summary>
    public Action? Answering { get; set; }

    public string Fragment { get; set; } = "";

    public string Address { get; set; } = "http://127.0.0.1/course/lab/index.html#old";

    public bool IsDark { get; private set; }

    public string PreferredLanguage { get; set; } = "en-GB";

    // A clock that goes on whenever it is looked at, so that work is cut into portions here, too.
    public double Now => _now += 5;

    private double _now;

    /// <summary>Pictures made ready, by element; shown ones are no longer there.</summary>
    public Dictionary<string, string> Ahead { get; } = new(StringComparer.Ordinal);

    public void Draw(string host, string svg, bool moves)
    {
        Ahead.Remove(host);
        Drawn[host] = svg;
    }

    public void DrawAhead(string host, string svg) => Ahead[host] = svg;

    public void ShowAhead(string host)
    {
        Drawn[host] = Ahead[host];
        Ahead.Remove(host);
    }

    public void Mark(int task)
    {
    }

    public void Paint(string host, int rows, Span<double> bars, Span<double> links, string paints)
    {
    }

    public void Point(string host, string line, double share)
    {
    }

    public void ShowDialog(string id, bool isOpen) => Dialogs.Add((id, isOpen));

    public (double Width, double Height) SizeOf(string host) => (800, 500);

    public void WatchSize(string host, Action<double, double> changed)
    {
        (double width, double height) = SizeOf(host);
        changed(width, height);
    }

    public void Listen(IPageEvents events)
    {
    }

    public void SetFragment(string fragment)
    {
        Fragments.Add(fragment);
        Fragment = fragment;
    }

    public Task<bool> CopyAsync(string text)
    {
        Copied = text;
        return Task.FromResult(true);
    }

    public void Save(string name, string type, byte[] bytes) => Saved.Add((name, bytes));

    public Task SavePngAsync(string name, string svg, double scale) => Task.CompletedTask;

    public Task<string?> FetchAsync(string relative) => Task.FromResult(Files.GetValueOrDefault(relative));

    public void SetTheme(string theme) => IsDark = theme == "dark";

    public void SetMode(string mode, bool isOn)
    {
        if (isOn)
            Modes.Add(mode);
        else
            Modes.Remove(mode);
    }

    public void ToggleFullScreen()
    {
    }

    public void SetLanguage(string code)
    {
    }

    public void Print()
    {
    }

    public void Reveal(string id)
    {
    }

    public void Focus(string host) => Focused = host;

    public void PlaceCaret(string host, int offset, int length) => Focused = host;

    private readonly Queue<TaskCompletionSource> _waiting = [];

    public Task IdleAsync()
    {
        var waiting = new TaskCompletionSource();
        _waiting.Enqueue(waiting);
        return waiting.Task;
    }

    /// <summary>Nothing is to be done for a while: those who waited for that go on.</summary>
    public void Rest()
    {
        for (int waiting = _waiting.Count; waiting > 0; waiting--)
            _waiting.Dequeue().SetResult();
    }

    public Task BreatheAsync()
    {
        Breaths++;
        Answering?.Invoke();
        return Task.CompletedTask;
    }
}
