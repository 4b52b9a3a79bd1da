using System.Diagnostics;
using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using Rookery.Labs;
using Rookery.Tests.Labs;

#pragma warning disable CA2234 // Addresses as texts: they are what a browser would send, odd ones among them.

namespace Rookery.Tests.Commands;

/// <summary>The lab beside served and published lessons.</summary>
public sealed partial class LabTests
{
    private const string Program = "lab/_framework/dotnet.native.wasm";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Serve_WithLab_SendsItsFilesAndNothingElse()
    {
        using TestRun run = PublishTests.Lessons();
        string lab = SmallLab.In(run.PathOf("the-lab"));
        run.Put("secret.txt", "secret");
        await Serving(run, lab, async client =>
        {
            using HttpResponseMessage page = await client.GetAsync("lab/", Stop);
            Assert.Equal(SmallLab.Page, await page.Content.ReadAsStringAsync(Stop));
            Assert.Equal(SmallLab.Policy, Assert.Single(page.Headers.GetValues("Content-Security-Policy")));
            Assert.Equal("text/html", page.Content.Headers.ContentType!.MediaType);
            Assert.Equal("application/manifest+json",
                (await client.GetAsync("lab/manifest.webmanifest", Stop)).Content.Headers.ContentType!.MediaType);
            await SendsTheFormThatIsAskedFor(client, lab);
            using HttpResponseMessage bare = await client.GetAsync("lab", Stop);
            Assert.Equal(HttpStatusCode.Redirect, bare.StatusCode);
            foreach (string path in (string[])
                ["lab/../secret.txt", "lab/..%2fsecret.txt", "lab/%2e%2e/%2e%2e/secret.txt", "lab/_framework/",
                    "lab/..%5csecret.txt", "laboratory", Program + ".br"])
                Assert.Equal(HttpStatusCode.NotFound, (await client.GetAsync(path, Stop)).StatusCode);
            string lesson = await client.GetStringAsync("a.html", Stop);
            Assert.Contains("lab/index.html#from=../parts/a/rk-exhibit-1.lab.json&amp;step=", lesson,
                StringComparison.Ordinal);
            using var start = JsonDocument.Parse(await client.GetStringAsync("parts/a/rk-exhibit-1.lab.json", Stop));
            Assert.Equal(TestRun.Count, start.RootElement.GetProperty("text").GetString());
        });
    }

    [Fact]
    public async Task Serve_WithoutLab_SaysHowToGetIt()
    {
        using TestRun run = PublishTests.Lessons();
        await Serving(run, run.PathOf("nowhere"), async client =>
        {
            using HttpResponseMessage page = await client.GetAsync("lab/", Stop);
            Assert.Equal(HttpStatusCode.ServiceUnavailable, page.StatusCode);
            Assert.Contains(LabFolder.Variable, await page.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
            Assert.DoesNotContain("rk-lab", await client.GetStringAsync("a.html", Stop), StringComparison.Ordinal);

            // It may come meanwhile.
            SmallLab.In(run.PathOf("nowhere"));
            Assert.Equal(SmallLab.Page, await client.GetStringAsync("lab/index.html", Stop));
        });
    }

    [Fact]
    public async Task Publish_WithLab_CarriesItWhole()
    {
        using TestRun run = PublishTests.Lessons();
        string lab = SmallLab.In(run.PathOf("the-lab"));

        string said = await Publish(run, lab, "--out", run.PathOf("out"));

        foreach (string name in LabFolder.At(lab)!.Names)
        {
            Assert.Equal(
                await File.ReadAllBytesAsync(Path.Combine(lab, name), Stop),
                await File.ReadAllBytesAsync(run.PathOf("out/lab/" + name), Stop));
        }

        Assert.Contains("--without-lab", said, StringComparison.Ordinal);
        Assert.Contains("Open in the lab", await File.ReadAllTextAsync(run.PathOf("out/a.html"), Stop),
            StringComparison.Ordinal);
        Assert.True(File.Exists(run.PathOf("out/parts/a/rk-exhibit-1.lab.json")));
    }

    [Fact]
    public async Task Publish_WithoutLab_LeavesOutItsLinks()
    {
        using TestRun run = PublishTests.Lessons();
        await Publish(run, SmallLab.In(run.PathOf("the-lab")), "--out", run.PathOf("out"), "--without-lab");

        Assert.False(Directory.Exists(run.PathOf("out/lab")));
        Assert.DoesNotContain("rk-lab", await File.ReadAllTextAsync(run.PathOf("out/a.html"), Stop),
            StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFiles(run.PathOf("out"), "*.lab.json", SearchOption.AllDirectories));
    }

    private static async Task SendsTheFormThatIsAskedFor(HttpClient client, string lab)
    {
        using var ask = new HttpRequestMessage(HttpMethod.Get, Program);
        ask.Headers.TryAddWithoutValidation("Accept-Encoding", "gzip, br");
        using HttpResponseMessage answer = await client.SendAsync(ask, Stop);
        Assert.Equal("br", Assert.Single(answer.Content.Headers.ContentEncoding));
        Assert.Equal("application/wasm", answer.Content.Headers.ContentType!.MediaType);
        Assert.Equal(
            await File.ReadAllBytesAsync(Path.Combine(lab, Program[4..] + ".br"), Stop),
            await answer.Content.ReadAsByteArrayAsync(Stop));
        Assert.Equal(SmallLab.Program, await client.GetByteArrayAsync(Program, Stop));

        using var again = new HttpRequestMessage(HttpMethod.Get, Program);
        again.Headers.TryAddWithoutValidation("Accept-Encoding", "br");
        again.Headers.TryAddWithoutValidation("If-None-Match", answer.Headers.ETag!.ToString());
        using HttpResponseMessage known = await client.SendAsync(again, Stop);
        Assert.Equal(HttpStatusCode.NotModified, known.StatusCode);
    }

    private static async Task Serving(TestRun run, string lab, Func<HttpClient, Task> look)
    {
        using Process process = Start(run, lab, "serve", run.PathOf("lessons"), "--no-cache");
        try
        {
            string line = await process.StandardOutput.ReadLineAsync(Stop) ?? "";
            using var handler = new HttpClientHandler
            {
                AllowAutoRedirect = false,
                CheckCertificateRevocationList = true,
            };
            using var client = new HttpClient(handler) { BaseAddress = new(Address().Match(line).Value) };
            await look(client);
        }
        finally
        {
            process.Kill();
            await process.WaitForExitAsync(Stop);
        }
    }

    private static async Task<string> Publish(TestRun run, string lab, params string[] more)
    {
        using Process process = Start(run, lab, ["publish", run.PathOf("lessons"), "--no-cache", .. more]);
        string said = await process.StandardOutput.ReadToEndAsync(Stop);
        await process.WaitForExitAsync(Stop);
        Assert.Equal(0, process.ExitCode);
        return said;
    }

    private static Process Start(TestRun run, string lab, params string[] words)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, WorkingDirectory = run.Folder };
        start.Environment[LabFolder.Variable] = lab;
        start.ArgumentList.Add(typeof(App).Assembly.Location);
        foreach (string word in words)
            start.ArgumentList.Add(word);
        return Process.Start(start)!;
    }

    [GeneratedRegex("http://[0-9.:]+")]
    private static partial Regex Address();
}
