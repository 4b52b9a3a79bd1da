using System.Text;
using Rookery.Lessons.Blocks;
using Rookery.Lessons.Site;
using Rookery.Programs;
using Rookery.Simulation;
using Rookery.Traces;

namespace Rookery.Lessons.Tests;

/// <summary>Exhibits of recordings: audited when they are read, and shown like a run of the simulator.</summary>
public sealed class RecordedExhibitTests
{
    private const string Usual = "trace: run.parquet\ncomputer: a test";
    private const string All = "\nshow: [deques, timeline, tree, stolen-work, steals, measures, laws]\n"
        + "stop: [first steal]";

    [Fact]
    public void Recording_OfASimulatedRun_HasItsNumbersAndViews()
    {
        Built recorded = Of(Usual + All + "\nexpect: [ finished, steals > 0 ]", "{= makespan } {= param.grain }");
        Built simulated = Built.Of(Built.Exhibit("program: count.fj\nworkers: 3\nmachine: unit\nseed: 5" + All));

        Assert.Equal("", recorded.Said);
        BlockResult one = recorded.Results[0], other = simulated.Results[0];
        Assert.Equal(other.Measures, one.Measures);
        Assert.Equal(other.Figures.Select(figure => figure.Wide), one.Figures.Select(figure => figure.Wide));
        Assert.Equal(other.Tables.Select(table => table.Caption), one.Tables.Select(table => table.Caption));
        Assert.Equal(other.Player!.Wide, one.Player!.Wide);
        Assert.Contains("on a test", recorded.Page, StringComparison.Ordinal);
    }

    [Fact]
    public void Recording_AsCsv_IsReadToo()
    {
        Built built = Of("trace: run.csv\ncomputer: a test");

        Assert.Equal("", built.Said);
        Assert.Equal(Of(Usual).Results[0].Measures, built.Results[0].Measures);
    }

    [Fact]
    public void Recording_ThatBreaksARule_IsRefusedWithTheRule()
    {
        Built built = Of("trace: wrong.csv\ncomputer: a test");

        Assert.Equal(["LS053"], built.Codes);
    }

    [Theory]
    [InlineData("trace: run.parquet", "trace: rum.parquet", "LS014")]
    [InlineData("trace: run.parquet", "trace: ../run.parquet", "LS013")]
    [InlineData("trace: run.parquet", "trace: torn.parquet", "LS041")]
    [InlineData("trace: run.parquet", "trace: count.fj", "LS041")]
    [InlineData("computer: a test", "name: here", "LS009")]
    [InlineData("computer: a test", "computer: a test\nworkers: 4", "LS007")]
    [InlineData("computer: a test", "computer: a test\nshow: speed-up", "LS052")]
    [InlineData("computer: a test", "computer: a test\nstop: steal 999", null)]
    public void Field_Wrong_IsRefused(string right, string wrong, string? code)
    {
        Built built = Of(Usual.Replace(right, wrong, StringComparison.Ordinal));

        Assert.NotEmpty(built.Problems);
        if (code is not null)
            Assert.Equal([code], built.Codes);
    }

    [Fact]
    public void Key_ChangesWithTheRecording()
    {
        LessonBlock block = LessonReader.Read("lesson.md", Built.Exhibit(Usual)).Value!.Blocks[0];

        Assert.NotEqual(block.KeyOf(Files()), block.KeyOf(Files().Put("run.parquet", [1, 2, 3])));
    }

    [Fact]
    public void Exhibit_ComputedTwice_IsTheSameToTheByte()
    {
        Built once = Of(Usual + All), again = Of(Usual + All);

        Assert.Equal(
            once.Files.OfType<TextFile>().Select(file => (file.Path, file.Text)),
            again.Files.OfType<TextFile>().Select(file => (file.Path, file.Text)));
    }

    private static MemoryFiles Files()
    {
        FjProgram program = ProgramReader.Read("count.fj", MemoryFiles.Count.ReplaceLineEndings("\n")).Value!;
        BoundProgram bound = program.Bind(new BindInputs(
            System.Collections.Immutable.ImmutableSortedDictionary<string, long>.Empty, new MemoryFiles(), 5,
            LessonLimits.Evaluation)).Value!;
        Trace trace = Simulator.Record(
            bound, new RunSettings { Workers = 3, Machine = Machine.Unit }, null).Trace!;
        using var csv = new MemoryStream();
        TraceCsv.Write(trace, csv);
        byte[] bytes = ParquetOf(trace).GetAwaiter().GetResult();
        string[] rows = Encoding.UTF8.GetString(csv.ToArray()).Split('\n');
        string wrong = string.Join('\n', rows.Where((row, at) =>
            !(row.Contains(",steal,", StringComparison.Ordinal) && at > 0)));
        return new MemoryFiles().Put("run.parquet", bytes).Put("torn.parquet", bytes[..(bytes.Length / 2)])
            .Put("run.csv", csv.ToArray()).Put("wrong.csv", wrong);
    }

    private static async Task<byte[]> ParquetOf(Trace trace)
    {
        using var stream = new MemoryStream();
        await TraceParquet.WriteAsync(trace, stream, TestContext.Current.CancellationToken);
        return stream.ToArray();
    }

    private static Built Of(string fields, string after = "") => Built.Of(Built.Exhibit(fields, after), Files());
}
