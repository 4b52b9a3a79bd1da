using System.Net;
using Rookery.Labs;

namespace Rookery.Web;

/// <summary>The page that stands in the lab's place until it is there.</summary>
internal static class MissingLab
{
    /// <summary>The page; while the lab is being built it asks again by itself.</summary>
    public static string Page()
    {
        string place = LabFolder.Place;
        bool hasFailed = File.Exists(place + "-failed");
        bool isComing = !hasFailed && File.Exists(place + "-begun");
        string again = isComing ? "<meta http-equiv=\"refresh\" content=\"3\">" : "";
        string text = isComing
            ? "<p>The lab is being built. This takes a minute or two the first time; the page opens by itself.</p>"
            : hasFailed
                ? $"<p>The lab could not be built. What went wrong stands in {Told(place + "-failed")}; lessons and "
                    + "players work without it.</p>"
                : "<p>This program was built without the lab. Publish it with "
                    + "<code>dotnet publish src/Rookery.Lab</code>, set the environment variable "
                    + $"<code>{LabFolder.Variable}</code> to the folder <code>wwwroot</code> that this makes, "
                    + "and reload this page. <code>./rookery</code> does all that by itself.</p>";
        return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
            + $"<meta name=\"viewport\" content=\"width=device-width\">{again}\n"
            + "<title>The lab is not here yet</title>\n"
            + $"</head>\n<body>\n<main>\n<h1>The lab is not here yet</h1>\n{text}\n"
            + "<p><a href=\"../index.html\">To the lessons</a></p>\n</main>\n</body>\n</html>\n";
    }

    private static string Told(string path) => $"<code>{WebUtility.HtmlEncode(path)}</code>";
}
