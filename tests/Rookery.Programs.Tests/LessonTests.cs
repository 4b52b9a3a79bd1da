using Rookery.Testing;

namespace Rookery.Programs.Tests;

/// <summary>Every demo program reads, runs, and is of a size that a class can look at.</summary>
public sealed class LessonTests
{
    public static TheoryData<string> Programs =>
    [
        .. Directory.GetFiles(Folder, "*.fj", SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(Folder, file).Replace('\\', '/'))
            .Order(StringComparer.Ordinal),
    ];

    private static string Folder => Path.Combine(AppContext.BaseDirectory, "lessons");

    [Theory]
    [MemberData(nameof(Programs))]
    public void Lesson_Program_RunsAndAgreesWithItsAnalysis(string file)
    {
        var program = Bind(file);
        var run = SerialRun.Of(program);
        Assert.Equal(
            new Analysis(run.Tasks, run.Forks, run.Work, run.Span, run.Deepest), ProgramAnalysis.Analyse(program));
        Assert.InRange(run.Actions, 40, 10_000);
        Assert.True(run.Work > 3 * run.Span, "nothing to share");
    }

    [Fact]
    public void Lesson_Programs_AreAllThere() => Assert.InRange(Programs.Count, 8, int.MaxValue);

    [Fact]
    public void Lesson_EvenAndUnevenTiles_HoldNearlyTheSameWork()
    {
        long even = ProgramAnalysis.Analyse(Bind("seabird/count.fj")).Work;
        long uneven = ProgramAnalysis.Analyse(Bind("seabird/count-uneven.fj")).Work;
        Assert.InRange((double)even / uneven, 0.98, 1.02);
    }

    private static BoundProgram Bind(string file)
    {
        string path = Path.Combine(Folder, file);
        var source = new FolderSource(Path.GetDirectoryName(path)!);
        var program = ProgramReader.Read(file, File.ReadAllText(path)).OrThrow();
        return program.Bind(Fj.Inputs() with { Data = source }).OrThrow();
    }

    private sealed class FolderSource(string folder) : IDataSource
    {
        public TextReader Open(string file) => new StreamReader(Path.Combine(folder, file));
    }
}
