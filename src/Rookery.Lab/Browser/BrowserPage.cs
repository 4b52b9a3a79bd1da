using System.Runtime.InteropServices.JavaScript;

namespace Rookery.Lab.Browser;

/// <summary>The page in a browser: calls what <c>wwwroot/lab.js</c> offers.</summary>
internal sealed partial class BrowserPage : IPage
{
    private static IPageEvents? s_events;

    /// <inheritdoc/>
    public string Fragment => Script.Fragment();

    /// <inheritdoc/>
    public string Address => Script.Address();

    /// <inheritdoc/>
    public bool IsDark => Script.IsDark();

    /// <inheritdoc/>
    public string PreferredLanguage => Script.PreferredLanguage();

    /// <inheritdoc/>
    public double Now => Script.Now();

    /// <summary>Loads the script; before anything else.</summary>
    public static async Task LoadAsync() =>
        await JSHost.ImportAsync("lab", "../lab.js").ConfigureAwait(true);

    /// <inheritdoc/>
    public void Draw(string host, string svg, bool moves) => Script.Draw(host, svg, moves);

    /// <inheritdoc/>
    public void DrawAhead(string host, string svg) => Script.DrawAhead(host, svg);

    /// <inheritdoc/>
    public void ShowAhead(string host) => Script.ShowAhead(host);

    /// <inheritdoc/>
    public void Mark(int task) => Script.Mark(task);

    /// <inheritdoc/>
    public void Point(string host, string line, double share) => Script.Point(host, line, share);

    /// <inheritdoc/>
    public void Paint(string host, int rows, Span<double> bars, Span<double> links, string paints) =>
        Script.Paint(host, rows, bars, links, paints);

    /// <inheritdoc/>
    public void ShowDialog(string id, bool isOpen) => Script.ShowDialog(id, isOpen);

    /// <inheritdoc/>
    public (double Width, double Height) SizeOf(string host) => (Script.WidthOf(host), Script.HeightOf(host));

    /// <inheritdoc/>
    public void WatchSize(string host, Action<double, double> changed) => Script.WatchSize(host, changed);

    /// <inheritdoc/>
    public void Listen(IPageEvents events)
    {
        s_events = events;
        Script.Listen(OnKey, OnTarget, OnResize, OnFragment);
        Script.ListenToTime(OnTime, OnZoom, OnPan);
        Script.ListenToFiles(name => OnFile(name, Script.TakeFile()));
    }

    /// <inheritdoc/>
    public void SetFragment(string fragment) => Script.SetFragment(fragment);

    /// <inheritdoc/>
    public Task<bool> CopyAsync(string text) => Script.CopyAsync(text);

    /// <inheritdoc/>
    public void Save(string name, string type, byte[] bytes) => Script.Save(name, type, bytes);

    /// <inheritdoc/>
    public Task SavePngAsync(string name, string svg, double scale) => Script.SavePngAsync(name, svg, scale);

    /// <inheritdoc/>
    public Task<string?> FetchAsync(string relative) => Script.FetchAsync(relative);

    /// <inheritdoc/>
    public void SetTheme(string theme) => Script.SetTheme(theme);

    /// <inheritdoc/>
    public void SetMode(string mode, bool isOn) => Script.SetMode(mode, isOn);

    /// <inheritdoc/>
    public void ToggleFullScreen() => Script.ToggleFullScreen();

    /// <inheritdoc/>
    public void SetLanguage(string code) => Script.SetLanguage(code);

    /// <inheritdoc/>
    public void Print() => Script.Print();

    /// <inheritdoc/>
    public void Reveal(string id) => Script.Reveal(id);

    /// <inheritdoc/>
    public void Focus(string host) => Script.Focus(host);

    /// <inheritdoc/>
    public void PlaceCaret(string host, int offset, int length) => Script.PlaceCaret(host, offset, length);

    /// <inheritdoc/>
    public Task IdleAsync() => Script.IdleAsync();

    /// <inheritdoc/>
    public Task BreatheAsync() => Script.BreatheAsync();

    private static bool OnKey(string key, int modifiers) =>
        s_events?.OnKey(key, (modifiers & 1) != 0, (modifiers & 2) != 0) ?? false;

    private static void OnTarget(string host, string target) => s_events?.OnTarget(host, target);

    private static void OnTime(double share) => s_events?.OnTime(share);

    private static void OnZoom(double share, double factor) => s_events?.OnZoom(share, factor);

    private static void OnPan(double share) => s_events?.OnPan(share);

    private static void OnResize() => s_events?.OnResize();

    private static void OnFragment(string fragment) => s_events?.OnFragment(fragment);

    private static void OnFile(string name, byte[] bytes) => s_events?.OnFile(name, bytes);

    private static partial class Script
    {
        [JSImport("draw", "lab")]
        internal static partial void Draw(string host, string svg, bool moves);

        [JSImport("drawAhead", "lab")]
        internal static partial void DrawAhead(string host, string svg);

        [JSImport("showAhead", "lab")]
        internal static partial void ShowAhead(string host);

        [JSImport("mark", "lab")]
        internal static partial void Mark(int task);

        [JSImport("point", "lab")]
        internal static partial void Point(string host, string line, double share);

        [JSImport("showDialog", "lab")]
        internal static partial void ShowDialog(string id, bool isOpen);

        [JSImport("listenToTime", "lab")]
        internal static partial void ListenToTime(
            [JSMarshalAs<JSType.Function<JSType.Number>>] Action<double> time,
            [JSMarshalAs<JSType.Function<JSType.Number, JSType.Number>>] Action<double, double> zoom,
            [JSMarshalAs<JSType.Function<JSType.Number>>] Action<double> pan);

        [JSImport("paint", "lab")]
        internal static partial void Paint(
            string host, int rows, [JSMarshalAs<JSType.MemoryView>] Span<double> bars,
            [JSMarshalAs<JSType.MemoryView>] Span<double> links, string paints);

        [JSImport("widthOf", "lab")]
        internal static partial double WidthOf(string host);

        [JSImport("heightOf", "lab")]
        internal static partial double HeightOf(string host);

        [JSImport("watchSize", "lab")]
        internal static partial void WatchSize(
            string host, [JSMarshalAs<JSType.Function<JSType.Number, JSType.Number>>] Action<double, double> changed);

        [JSImport("listen", "lab")]
        internal static partial void Listen(
            [JSMarshalAs<JSType.Function<JSType.String, JSType.Number, JSType.Boolean>>] Func<string, int, bool> key,
            [JSMarshalAs<JSType.Function<JSType.String, JSType.String>>] Action<string, string> target,
            [JSMarshalAs<JSType.Function>] Action resize,
            [JSMarshalAs<JSType.Function<JSType.String>>] Action<string> fragment);

        [JSImport("listenToFiles", "lab")]
        internal static partial void ListenToFiles(
            [JSMarshalAs<JSType.Function<JSType.String>>] Action<string> file);

        [JSImport("takeFile", "lab")]
        internal static partial byte[] TakeFile();

        [JSImport("fragment", "lab")]
        internal static partial string Fragment();

        [JSImport("setFragment", "lab")]
        internal static partial void SetFragment(string fragment);

        [JSImport("address", "lab")]
        internal static partial string Address();

        [JSImport("copy", "lab")]
        internal static partial Task<bool> CopyAsync(string text);

        [JSImport("save", "lab")]
        internal static partial void Save(string name, string type, byte[] bytes);

        [JSImport("savePng", "lab")]
        internal static partial Task SavePngAsync(string name, string svg, double scale);

        [JSImport("fetchText", "lab")]
        internal static partial Task<string?> FetchAsync(string relative);

        [JSImport("setTheme", "lab")]
        internal static partial void SetTheme(string theme);

        [JSImport("isDark", "lab")]
        internal static partial bool IsDark();

        [JSImport("setMode", "lab")]
        internal static partial void SetMode(string mode, bool isOn);

        [JSImport("toggleFullScreen", "lab")]
        internal static partial void ToggleFullScreen();

        [JSImport("setLanguage", "lab")]
        internal static partial void SetLanguage(string code);

        [JSImport("preferredLanguage", "lab")]
        internal static partial string PreferredLanguage();

        [JSImport("print", "lab")]
        internal static partial void Print();

        [JSImport("reveal", "lab")]
        internal static partial void Reveal(string id);

        [JSImport("focus", "lab")]
        internal static partial void Focus(string host);

        [JSImport("placeCaret", "lab")]
        internal static partial void PlaceCaret(string host, int offset, int length);

        [JSImport("now", "lab")]
        internal static partial double Now();

        [JSImport("rest", "lab")]
        internal static partial Task IdleAsync();

        [JSImport("breathe", "lab")]
        internal static partial Task BreatheAsync();
    }
}
