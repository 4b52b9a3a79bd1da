using System.Xml.Linq;
using Rookery.Testing;

namespace Rookery.Architecture.Tests;

/// <summary>Which project may refer to which: arrows point downhill only, as docs/architecture.md draws them.</summary>
public sealed class ReferenceGraphTests
{
    private static readonly Dictionary<string, string[]> Permitted = new(StringComparer.Ordinal)
    {
        ["Rookery.Notation"] = [],
        ["Rookery.Programs"] = ["Rookery.Notation"],
        ["Rookery.Traces"] = ["Rookery.Notation"],
        ["Rookery.Simulation"] = ["Rookery.Programs", "Rookery.Traces"],
        ["Rookery.Checking"] = ["Rookery.Notation"],
        ["Rookery.Drawing"] = ["Rookery.Traces", "Rookery.Checking"],
        ["Rookery.Experiments"] = ["Rookery.Simulation"],
        ["Rookery.Lessons"] =
        [
            "Rookery.Programs", "Rookery.Traces", "Rookery.Simulation", "Rookery.Experiments", "Rookery.Checking",
            "Rookery.Drawing",
        ],
        ["Rookery.Lab"] =
        [
            "Rookery.Programs", "Rookery.Traces", "Rookery.Simulation", "Rookery.Experiments", "Rookery.Drawing",
            "Rookery.Checking",
        ],
        ["Rookery.Pool"] = [],
        ["Rookery.Measuring"] = ["Rookery.Pool", "Rookery.Programs", "Rookery.Simulation", "Rookery.Traces"],
        ["Rookery"] =
        [
            "Rookery.Programs", "Rookery.Traces", "Rookery.Simulation", "Rookery.Experiments", "Rookery.Drawing",
            "Rookery.Lessons", "Rookery.Checking", "Rookery.Measuring",
        ],
    };

    private static readonly string[] Pure =
        ["Rookery.Notation", "Rookery.Programs", "Rookery.Traces", "Rookery.Simulation", "Rookery.Experiments",
            "Rookery.Checking", "Rookery.Drawing", "Rookery.Lessons"];

    public static TheoryData<string> Projects() =>
        [.. Directory.GetDirectories(RepositoryFile.At("src")).Select(f => Path.GetFileName(f)!).Order()];

    [Theory]
    [MemberData(nameof(Projects))]
    public void ProjectFile_References_ArePermitted(string project)
    {
        Assert.True(Permitted.ContainsKey(project), $"{project} needs a row here and in docs/architecture.md.");
        Assert.Empty(Load(project).Descendants("ProjectReference")
            .Select(r => Path.GetFileNameWithoutExtension(r.Attribute("Include")!.Value))
            .Except(Permitted[project]));
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void ProjectFile_PureMark_IsOnThePureProjectsAlone(string project) =>
        Assert.Equal(
            Pure.Contains(project), Load(project).Descendants("Pure").Any(p => (bool?)p == true));

    [Theory]
    [MemberData(nameof(Projects))]
    public void Architecture_Document_HasARowForTheProject(string project) =>
        Assert.Contains(
            $"| `{project}` |", File.ReadAllText(RepositoryFile.At("docs/architecture.md")), StringComparison.Ordinal);

    private static XDocument Load(string project) =>
        XDocument.Load(RepositoryFile.At($"src/{project}/{project}.csproj"));
}
