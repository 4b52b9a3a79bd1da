using System.Globalization;
using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Rookery.Courses;
using Rookery.Lessons.Site;
using Rookery.Notation;

namespace Rookery.Web;

/// <summary>Serves a course on this computer, and to nobody else: on the loopback address only.</summary>
internal static class LessonServer
{
    /// <summary>Serves until stopped.</summary>
    /// <param name="course">What is served.</param>
    /// <param name="printer">Prints the pictures that are asked for.</param>
    /// <param name="port">The port; 0 for a free one.</param>
    /// <param name="started">Told the address.</param>
    /// <param name="stop">Ends it.</param>
    /// <exception cref="InputException">The port is taken.</exception>
    public static async Task Run(
        LiveCourse course, SitePrinter printer, int port, Action<string> started, CancellationToken stop)
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder(
            new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory });
        builder.Logging.ClearProviders();
        builder.WebHost.ConfigureKestrel(server =>
        {
            server.Listen(IPAddress.Loopback, port);
            server.AddServerHeader = false;
        });
        await using WebApplication app = builder.Build();
        var lab = new LabPages();
        app.Run(context => Answer(context, course, printer, lab, stop));
        try
        {
            await app.StartAsync(stop);
        }
        catch (IOException) when (port != 0)
        {
            throw new InputException(AppErrors.PortTaken(port));
        }

        started(app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First());
        try
        {
            await course.Follow(stop);
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            // The reader has finished.
        }

        using var soon = new CancellationTokenSource(TimeSpan.FromSeconds(1));
        await app.StopAsync(soon.Token);
    }

    private static async Task Answer(
        HttpContext context, LiveCourse course, SitePrinter printer, LabPages lab, CancellationToken stop)
    {
        // A page of the web could make a browser ask here under a name of its own; only our own names are answered.
        bool isOurs = context.Request.Host.Host is "127.0.0.1" or "localhost" or "[::1]";
        bool isReading = HttpMethods.IsGet(context.Request.Method) || HttpMethods.IsHead(context.Request.Method);
        if (!isOurs || !isReading)
        {
            context.Response.StatusCode = isOurs ? StatusCodes.Status405MethodNotAllowed
                : StatusCodes.Status403Forbidden;
            return;
        }

        string path = (context.Request.Path.Value ?? "/").TrimStart('/');
        if (path == "live")
        {
            await TellChanges(context, course, stop);
            return;
        }

        if (LabPages.Owns(path))
        {
            await lab.Answer(context, path);
            return;
        }

        SiteSnapshot now = course.Now;
        if (!now.Files.TryGetValue(path.Length == 0 ? "index.html" : path, out SiteFile? file))
        {
            context.Response.StatusCode = StatusCodes.Status404NotFound;
            context.Response.ContentType = "text/plain; charset=utf-8";
            await context.Response.WriteAsync("There is no such page. The lessons begin at /\n", stop);
            return;
        }

        context.Response.ContentType = ContentTypes.Of(file.Path);
        context.Response.Headers.CacheControl = "no-cache";

        // The one header that a page can read of itself (W3C Server Timing): a page knows which version it is.
        context.Response.Headers["Server-Timing"] =
            string.Create(CultureInfo.InvariantCulture, $"version;desc=\"{now.Version}\"");
        context.Response.Headers.XContentTypeOptions = "nosniff";
        ReadOnlyMemory<byte> bytes = printer.BytesOf(file);
        context.Response.ContentLength = bytes.Length;
        if (HttpMethods.IsGet(context.Request.Method))
            await context.Response.Body.WriteAsync(bytes, context.RequestAborted);
    }

    // Server-sent events (HTML Standard, section 9.2): the version at once, and each one that comes.
    private static async Task TellChanges(HttpContext context, LiveCourse course, CancellationToken stop)
    {
        context.Response.ContentType = "text/event-stream";
        context.Response.Headers.CacheControl = "no-store";
        using var end = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted, stop);
        try
        {
            while (!end.IsCancellationRequested)
            {
                int version = course.Now.Version;
                await context.Response.WriteAsync($"event: version\ndata: {version}\n\n", end.Token);
                await context.Response.Body.FlushAsync(end.Token);
                await course.WaitForOther(version, end.Token);
            }
        }
        catch (OperationCanceledException)
        {
            // The page was closed, or the server stops.
        }
    }
}
