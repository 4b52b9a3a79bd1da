namespace Rookery.Web;

/// <summary>What a file is, by its ending, in the words of a web server.</summary>
internal static class ContentTypes
{
    /// <summary>The media type of a file; plain text for an ending that is not known.</summary>
    public static string Of(string path) => Path.GetExtension(path).ToLowerInvariant() switch
    {
        ".html" => "text/html; charset=utf-8",
        ".css" => "text/css; charset=utf-8",
        ".js" => "text/javascript; charset=utf-8",
        ".json" or ".map" => "application/json",
        ".webmanifest" => "application/manifest+json",
        ".wasm" => "application/wasm",
        ".dat" or ".blat" => "application/octet-stream",
        ".svg" => "image/svg+xml",
        ".png" => "image/png",
        ".jpg" or ".jpeg" => "image/jpeg",
        ".gif" => "image/gif",
        ".webp" => "image/webp",
        ".pdf" => "application/pdf",
        ".woff" => "font/woff",
        ".pptx" => "application/vnd.openxmlformats-officedocument.presentationml.presentation",
        _ => "text/plain; charset=utf-8",
    };
}
