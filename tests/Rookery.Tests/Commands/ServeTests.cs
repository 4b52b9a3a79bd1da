using System.Diagnostics;
using System.Net;
using System.Text.RegularExpressions;

#pragma warning disable CA2234 // Addresses as texts: they are what a browser would send, odd ones among them.

namespace Rookery.Tests.Commands;

/// <summary><c>serve</c>: pages on the loopback address, built again when a file is saved, with errors in the
/// page.</summary>
public sealed partial class ServeTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Serve_SavedFile_IsBuiltAndToldToThePage()
    {
        using TestRun run = PublishTests.Lessons();
        using Process process = PublishTests.Start(run, "serve", run.PathOf("lessons"), "--no-cache");
        try
        {
            string line = await process.StandardOutput.ReadLineAsync(Stop) ?? "";
            string address = Address().Match(line).Value;
            Assert.StartsWith("http://127.0.0.1:", address, StringComparison.Ordinal);
            using var client = new HttpClient { BaseAddress = new(address) };
            Assert.Contains("Words.", await client.GetStringAsync("a.html", Stop), StringComparison.Ordinal);
            Assert.Equal("%PDF"u8.ToArray(), (await client.GetByteArrayAsync("figures/a/exhibit-1-timeline.pdf",
                Stop))[..4]);
            Assert.Equal("PK"u8.ToArray(), (await client.GetByteArrayAsync("slides/a.pptx", Stop))[..2]);
            using var news = new StreamReader(await client.GetStreamAsync("live", Stop));
            Assert.Equal("1", await Version(news));

            string lesson = await File.ReadAllTextAsync(run.PathOf("lessons/a.md"), Stop);
            run.Put("lessons/a.md", lesson.Replace("Words.", "Other words.", StringComparison.Ordinal));
            Assert.Equal("2", await Version(news));
            string open = await client.GetStringAsync("a.html", Stop);
            Assert.Contains("Other words.", open, StringComparison.Ordinal);
            string player = Part().Match(open).Groups[1].Value + ".js";

            // A page that is open while the course is built again asks for its players, which the new one may lack.
            run.Put("lessons/a.md", lesson.Replace("count.fj", "cuont.fj", StringComparison.Ordinal));
            Assert.Equal("3", await Version(news));
            string page = await client.GetStringAsync("a.html", Stop);
            Assert.Contains("LS014", page, StringComparison.Ordinal);
            Assert.Contains("Did you mean count.fj?", page, StringComparison.Ordinal);
            Assert.Contains("live.js", page, StringComparison.Ordinal);
            Assert.Equal(HttpStatusCode.OK, (await client.GetAsync(player, Stop)).StatusCode);
            await RefusesStrangers(client);
        }
        finally
        {
            process.Kill();
            await process.WaitForExitAsync(Stop);
        }
    }

    private static async Task RefusesStrangers(HttpClient client)
    {
        foreach (string path in (string[])["../secret", "..%2f..%2fetc%2fpasswd", "a.md", "count.fj"])
            Assert.Equal(HttpStatusCode.NotFound, (await client.GetAsync(path, Stop)).StatusCode);
        Assert.Equal(HttpStatusCode.MethodNotAllowed, (await client.PostAsync("a.html", null, Stop)).StatusCode);
        using var strange = new HttpRequestMessage(HttpMethod.Get, "a.html");
        strange.Headers.Host = "evil.example";
        Assert.Equal(HttpStatusCode.Forbidden, (await client.SendAsync(strange, Stop)).StatusCode);
    }

    private static async Task<string> Version(StreamReader news)
    {
        while (await news.ReadLineAsync(Stop) is { } line)
        {
            if (line.StartsWith("data: ", StringComparison.Ordinal))
                return line[6..];
        }

        return "";
    }

    [GeneratedRegex("data-files=\"([^\"]+)")]
    private static partial Regex Part();

    [GeneratedRegex("http://[0-9.:]+")]
    private static partial Regex Address();
}
