namespace Rookery.Browser.Tests.Browsing;

/// <summary>Where the browser of this computer is: Chromium or a relative of it.</summary>
internal static class BrowserProgram
{
    private static readonly string[] Names = ["chromium", "chromium-browser", "google-chrome", "chrome"];

    private static readonly string[] UsualPlaces =
    [
        "/Applications/Chromium.app/Contents/MacOS/Chromium",
        "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
        @"C:\Program Files\Google\Chrome\Application\chrome.exe",
        @"C:\Program Files (x86)\Microsoft\Edge\Application\msedge.exe",
    ];

    /// <summary>Finds it on the path, or where it usually is.</summary>
    /// <exception cref="InvalidOperationException">There is none: these tests cannot be passed over.</exception>
    public static string Find()
    {
        string ending = OperatingSystem.IsWindows() ? ".exe" : "";
        string[] folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator);
        return folders.SelectMany(folder => Names.Select(name => Path.Combine(folder, name + ending)))
            .Concat(UsualPlaces).FirstOrDefault(File.Exists)
            ?? throw new InvalidOperationException(
                "These tests open pages in Chromium, and it is nowhere on the PATH; ./test installs it.");
    }
}
