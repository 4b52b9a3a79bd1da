using Rookery.Lab.Browser;

namespace Rookery.Lab.Tests.Support;

/// <summary>A page without a browser: it remembers what it was asked.</summary>
internal sealed class FakePage : IPage
{
    /// <summary>The last picture of each element.</summary>
    public Dictionary<string, string> Drawn { get; } = [];

    /// <summary>The words on the root element.</summary>
    public HashSet<string> Modes { get; } = [];

    public string Fragment { get; private set; } = "";

    public string Address => "http://127.0.0.1/#" + Fragment;

    public bool IsDark { get; set; }

    public string PreferredLanguage => "en";

    public double Now { get; set; }

    /// <summary>The element that was last given the focus.</summary>
    public string Focused { get; private set; } = "";

    public void Draw(string host, string svg, bool moves) => Drawn[host] = svg;

    public void Mark(int task)
    {
    }

    public void Paint(string host, int rows, Span<double> bars, Span<double> links, string paints)
    {
    }

    public void Point(string host, string line, double share)
    {
    }

    public void Reveal(string host)
    {
    }

    public void ShowDialog(string id, bool isOpen)
    {
    }

    public (double Width, double Height) SizeOf(string host) => (800, 500);

    public void Listen(IPageEvents events)
    {
    }

    public void SetFragment(string fragment) => Fragment = fragment;

    public Task<bool> CopyAsync(string text) => Task.FromResult(true);

    public void Save(string name, string type, byte[] bytes)
    {
    }

    public Task SavePngAsync(string name, string svg, double scale) => Task.CompletedTask;

    public Task<string?> FetchAsync(string relative) => Task.FromResult<string?>(null);

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

    public void Focus(string host) => Focused = host;

    public void PlaceCaret(string host, int offset, int length) => Focused = host;

    public Task BreatheAsync() => Task.CompletedTask;
}
