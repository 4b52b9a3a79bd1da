using Microsoft.AspNetCore.Http;
using Rookery.Labs;

namespace Rookery.Web;

/// <summary>Answers what is asked for below <c>lab/</c>: the lab's files, or a page that says where it is.</summary>
/// <remarks>The lab may come while lessons are served: <c>./rookery</c> builds it beside them.</remarks>
internal sealed class LabPages
{
    /// <summary>The part of the address before the names of its files.</summary>
    public const string Prefix = "lab/";

    private volatile LabFolder? _folder = LabFolder.Find();

    /// <summary>Whether an address belongs to the lab.</summary>
    /// <param name="path">The path without a slash at its front.</param>
    public static bool Owns(string path) => path == "lab" || path.StartsWith(Prefix, StringComparison.Ordinal);

    /// <summary>Answers.</summary>
    /// <param name="context">The request, a reading one, and its answer.</param>
    /// <param name="path">The path without a slash at its front.</param>
    public async Task Answer(HttpContext context, string path)
    {
        // Addresses in the lab's page are relative to its folder.
        if (path == "lab")
        {
            context.Response.Redirect("/" + Prefix, permanent: false);
            return;
        }

        LabFolder? folder = Current();
        context.Response.Headers.XContentTypeOptions = "nosniff";
        if (folder is null)
            await SayItIsMissing(context);
        else if (folder.FileOf(path[Prefix.Length..]) is { } file)
            await Send(context, folder, file, path);
        else
            await SayNotFound(context);
    }

    private static async Task Send(HttpContext context, LabFolder folder, LabFile file, string path)
    {
        HttpResponse response = context.Response;
        (string form, string encoding, string tag) = file.FormFor(context.Request.Headers.AcceptEncoding.ToString());
        response.Headers.CacheControl = "no-cache";
        response.Headers.Vary = "Accept-Encoding";
        response.Headers.ETag = tag;
        if (IsKnown(context.Request.Headers.IfNoneMatch.ToString(), tag))
        {
            response.StatusCode = StatusCodes.Status304NotModified;
            return;
        }

        response.ContentType = ContentTypes.Of(path.EndsWith('/') ? LabFolder.First : path);
        response.Headers.ContentSecurityPolicy = folder.Policy;
        if (encoding.Length > 0)
            response.Headers.ContentEncoding = encoding;
        await using FileStream bytes = File.OpenRead(form);
        response.ContentLength = bytes.Length;
        if (HttpMethods.IsGet(context.Request.Method))
            await bytes.CopyToAsync(response.Body, context.RequestAborted);
    }

    private static bool IsKnown(string known, string tag) =>
        known == "*" || known.Split(',', StringSplitOptions.TrimEntries).Any(one => one == tag || one == "W/" + tag);

    private static Task SayNotFound(HttpContext context)
    {
        context.Response.StatusCode = StatusCodes.Status404NotFound;
        context.Response.ContentType = ContentTypes.Of(".txt");
        return context.Response.WriteAsync("The lab has no such file. It begins at /lab/\n", context.RequestAborted);
    }

    private static Task SayItIsMissing(HttpContext context)
    {
        HttpResponse response = context.Response;
        response.StatusCode = StatusCodes.Status503ServiceUnavailable;
        response.Headers.RetryAfter = "3";
        response.Headers.CacheControl = "no-store";
        response.Headers.ContentSecurityPolicy = "default-src 'none'";
        response.ContentType = ContentTypes.Of(".html");
        return response.WriteAsync(MissingLab.Page(), context.RequestAborted);
    }

    private LabFolder? Current()
    {
        LabFolder? known = _folder;
        if (known is null || known.IsOld())
            _folder = known = LabFolder.Find();
        return known;
    }
}
