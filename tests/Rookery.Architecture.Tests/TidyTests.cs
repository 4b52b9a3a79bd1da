using System.Diagnostics;
using System.Text.RegularExpressions;
using Rookery.Testing;

namespace Rookery.Architecture.Tests;

/// <summary>Order in the files of the repository: what a reader would stumble over.</summary>
public sealed partial class TidyTests
{
    private const int LineMax = 120;

    private static readonly string[] TextEndings =
        [".cs", ".md", ".csproj", ".props", ".targets", ".fj", ".dq", ".txt", ".slnx", ".css", ".js", ".razor"];

    [Fact]
    public void SourceLine_Any_IsAtMost120CharactersLong() =>
        Assert.Empty(
            from file in Files(".cs")
            from line in File.ReadLines(RepositoryFile.At(file)).Index()
            where line.Item.Length > LineMax
            select $"{file}:{line.Index + 1}");

    [Fact]
    public void TextFile_Any_HasNoLeftoverNote() => Assert.Empty(Matches(Leftover()));

    [Fact]
    public void TextFile_Any_NamesNoFolderOfAMachine() => Assert.Empty(Matches(MachinePath()));

    // A lesson's title stands in its front matter; that is its heading.
    [Fact]
    public void Page_Any_HasOneHeadingOfTheFirstLevel() =>
        Assert.All(
            Files(".md").Where(file => !IsLesson(file)),
            file =>
                Assert.Single(
                    Outside(File.ReadAllText(RepositoryFile.At(file))),
                    line => line.StartsWith("# ", StringComparison.Ordinal)));

    private static bool IsLesson(string file) =>
        File.ReadAllText(RepositoryFile.At(file)).StartsWith("---\n", StringComparison.Ordinal);

    [Fact]
    public void Link_ToAFile_LeadsSomewhere() =>
        Assert.Empty(
            from file in Files(".md")
            from Match link in Link().Matches(CodeSpan().Replace(File.ReadAllText(RepositoryFile.At(file)), ""))
            let target = link.Groups[1].Value.Split('#')[0]
            where target.Length > 0 && !target.Contains("://", StringComparison.Ordinal)
            let path = Path.Combine(Path.GetDirectoryName(RepositoryFile.At(file))!, target)
            where !File.Exists(path) && !Directory.Exists(path)
            select $"{file}: {target}");

    [Fact]
    public void PageNamedInSourceText_Any_Exists() =>
        Assert.Empty(
            from file in Files(".cs").Concat(Files(".md"))
            from Match page in DocumentName().Matches(File.ReadAllText(RepositoryFile.At(file)))
            where !File.Exists(RepositoryFile.At(page.Value))
            select $"{file}: {page.Value}");

    [Fact]
    public void Changelog_Headings_AreVersionsNewestFirst()
    {
        string[] headings =
        [
            .. File.ReadLines(RepositoryFile.At("CHANGELOG.md"))
                .Where(l => l.StartsWith("## ", StringComparison.Ordinal)),
        ];
        Assert.All(headings, h => Assert.Matches(@"^## \d+\.\d+\.\d+, (not yet released|\d{4}-\d\d-\d\d)$", h));
        Version[] versions = [.. headings.Select(h => Version.Parse(h[3..].Split(',')[0]))];
        Assert.Equal(versions.OrderDescending(), versions);
    }

    private static IEnumerable<string> Matches(Regex pattern) =>
        from file in TextEndings.SelectMany(Files)
        where !file.EndsWith("TidyTests.cs", StringComparison.Ordinal)
        from line in File.ReadLines(RepositoryFile.At(file)).Index()
        where pattern.IsMatch(line.Item)
        select $"{file}:{line.Index + 1}: {line.Item.Trim()}";

    // Lines that are not within a fenced block.
    private static IEnumerable<string> Outside(string page)
    {
        bool isFenced = false;
        foreach (string line in page.Split('\n'))
        {
            if (line.TrimStart().StartsWith("```", StringComparison.Ordinal))
                isFenced = !isFenced;
            else if (!isFenced)
                yield return line;
        }
    }

    // What git knows, so that outputs and downloads are no concern here.
    private static string[] Files(string ending)
    {
        var start = new ProcessStartInfo(
            "git", ["ls-files", "--cached", "--others", "--exclude-standard", "*" + ending])
        {
            WorkingDirectory = RepositoryFile.Root,
            RedirectStandardOutput = true,
        };
        using Process git = Process.Start(start)!;
        string[] files =
        [
            .. git.StandardOutput.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries)
                .Where(f => File.Exists(RepositoryFile.At(f))),
        ];
        git.WaitForExit();
        Assert.Equal(0, git.ExitCode);
        return files;
    }

    [GeneratedRegex(@"\b(FIXME|TODO|XXX|HACK)\b")]
    private static partial Regex Leftover();

    [GeneratedRegex(@"(?<![\w.])/(work|root|home|Users|tmp)/\w|[A-Z]:\\Users")]
    private static partial Regex MachinePath();

    // What stands in code is an example, not a link.
    [GeneratedRegex("`[^`\\n]*`")]
    private static partial Regex CodeSpan();

    [GeneratedRegex(@"\]\(([^)\s]+)\)")]
    private static partial Regex Link();

    [GeneratedRegex(@"\bdocs/[a-z0-9-]+(/[a-z0-9-]+)*\.md\b")]
    private static partial Regex DocumentName();
}
