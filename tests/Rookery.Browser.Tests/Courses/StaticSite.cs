using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.FileProviders;
using Microsoft.Extensions.Logging;

namespace Rookery.Browser.Tests.Courses;

/// <summary>A folder of files on a web server that knows nothing of us, on the loopback address.</summary>
internal sealed class StaticSite : IAsyncDisposable
{
    private readonly WebApplication _server;

    private StaticSite(WebApplication server, Uri address) => (_server, Address) = (server, address);

    /// <summary>Where it is; ends in a slash.</summary>
    public Uri Address { get; }

    /// <summary>Serves a folder from a free port.</summary>
    public static async Task<StaticSite> Of(string folder)
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.ConfigureKestrel(server => server.Listen(IPAddress.Loopback, 0));
        WebApplication server = builder.Build();
        server.UseFileServer(new FileServerOptions { FileProvider = new PhysicalFileProvider(folder) });
        await server.StartAsync();
        string address = server.Services.GetRequiredService<IServer>().Features
            .Get<IServerAddressesFeature>()!.Addresses.First();
        return new(server, new(address + "/"));
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => _server.DisposeAsync();
}
