using Rookery.Images;
using Rookery.Lessons.Site;

namespace Rookery.Courses;

/// <summary>The files that every published course carries: style, script, and the fonts of text and figures.</summary>
internal static class SharedFiles
{
    private static readonly string[] Fonts =
        ["IBMPlexSans-Regular.woff", "IBMPlexSans-SemiBold.woff", "IBMPlexMono-Regular.woff"];

    /// <summary>All of them.</summary>
    /// <param name="isLive">Whether pages show each change by themselves.</param>
    public static IEnumerable<SiteFile> All(bool isLive)
    {
        foreach (SiteFile file in CourseSite.Shared(isLive))
            yield return file;
        foreach (string font in Fonts)
            yield return new BinaryFile($"fonts/{font}", FigureFonts.Bytes(font));
        string licence = Path.Combine(AppContext.BaseDirectory, "font-licence.txt");
        if (File.Exists(licence))
            yield return new BinaryFile("fonts/LICENSE.txt", File.ReadAllBytes(licence));
    }
}
