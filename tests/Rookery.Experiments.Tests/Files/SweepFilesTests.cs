using System.Text;
using Parquet;
using Rookery.Experiments.Files;
using Rookery.Notation;
using Rookery.Simulation;
using Rookery.Traces.Measuring;

namespace Rookery.Experiments.Tests.Files;

public sealed class SweepFilesTests
{
    private static readonly Sweep Two = Sweep.Of(
        Subjects.Of(), Setup.Plain, [Factor.Parse("workers=1,3", []), Factor.Parse("victim=random,lowest", [])], 2);

    [Fact]
    public void Csv_AllCells_HasARowEachByTreatmentAndSeed()
    {
        CellResult[] cells = Subjects.Audited(Two);
        using var stream = new MemoryStream();
        SweepCsv.Write(Two, cells.Reverse(), stream);
        string[] lines = Encoding.UTF8.GetString(stream.ToArray()).Split('\n');
        Assert.StartsWith("workers,victim,seed,outcome,makespan,work", lines[0], StringComparison.Ordinal);
        Assert.Equal(10, lines.Length);
        Assert.Equal(
            ["1,random,1", "1,random,2", "1,lowest,1", "1,lowest,2", "3,random,1", "3,random,2", "3,lowest,1",
            "3,lowest,2"],
            lines[1..9].Select(l => string.Join(',', l.Split(',')[..3])));
    }

    [Fact]
    public async Task Parquet_AllCells_ReadsBackAsTheSameNumbers()
    {
        CellResult[] cells = Subjects.Audited(Two);
        using var stream = new MemoryStream();
        await SweepParquet.WriteAsync(Two, cells, stream);
        stream.Position = 0;
        await using ParquetReader reader = await ParquetReader.CreateAsync(
            stream, cancellationToken: TestContext.Current.CancellationToken);
        Assert.Equal(
            ["workers", "victim", "seed", "outcome", .. MeasureNames.All.Select(m => m.Name)],
            reader.Schema.GetDataFields().Select(f => f.Name));
        using ParquetRowGroupReader group = reader.OpenRowGroupReader(0);
        double?[] makespans = new double?[8];
        await group.ReadAsync<double>(
            reader.Schema.GetDataFields().Single(f => f.Name == "makespan"), makespans, null,
            TestContext.Current.CancellationToken);
        int at = MeasureNames.All.IndexOf(MeasureNames.Find("makespan")!);
        Assert.Equal(
            SweepColumns.InOrder(Two, cells).Select(c => (double?)c.Values[at].ToDouble()), makespans);
    }

    [Fact]
    public void Journal_CutOffAnywhere_GivesWholeCellsOnly()
    {
        CellResult[] cells = Subjects.Audited(Two);
        string text = string.Join(
            '\n', cells.Select(SweepJournal.LineOf).Prepend(SweepJournal.HeadingOf(Two))) + "\n";
        int heading = SweepJournal.HeadingOf(Two).Length;
        for (int length = heading; length <= text.Length; length++)
        {
            var read = SweepJournal.Read(Two, text[..length].Split('\n'));
            Assert.All(read, cell => Assert.Equal(cells[cell.Cell].Values, cell.Values));
            Assert.InRange(read.Length, text[..length].Count(c => c == '\n') - 1, cells.Length);
        }

        Assert.Equal(cells.Length, SweepJournal.Read(Two, text.Split('\n')).Length);
    }

    [Fact]
    public void Journal_OfOtherSeeds_IsRefused()
    {
        var other = Sweep.Of(Subjects.Of(), Setup.Plain, [Factor.Parse("workers=1,3", [])], 2);
        Assert.Throws<InputException>(() => SweepJournal.Read(Two, [SweepJournal.HeadingOf(other)]));
    }

    [Fact]
    public void Journal_AnyDamage_NeverGivesAWrongCell() =>
        Gen.Select(Gen.Int[0, 2_000], Gen.Char[" 0123456789/.-x\n"]).Sample((at, put) =>
        {
            string line = SweepJournal.LineOf(Two.Run(1));
            char[] damaged = line.ToCharArray();
            damaged[at % damaged.Length] = put;
            _ = SweepJournal.Read(Two, [SweepJournal.HeadingOf(Two), .. new string(damaged).Split('\n')]);
        });
}
