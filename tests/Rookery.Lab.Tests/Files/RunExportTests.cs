using System.Text.Json;
using System.Xml.Linq;
using Rookery.Drawing;
using Rookery.Lab.Documents;
using Rookery.Lab.Files;
using Rookery.Lab.Runs;
using Rookery.Lab.Session;
using Rookery.Notation;
using Rookery.Programs;
using Rookery.Simulation;
using Rookery.Traces;

namespace Rookery.Lab.Tests.Files;

/// <summary>What is kept is what the command line writes.</summary>
public sealed class RunExportTests
{
    [Theory]
    [InlineData("seabird/count.fj", "")]
    [InlineData("seabird/count-uneven.fj", "machine=unit seed=3 set.grain=50 victim=lowest workers=7")]
    [InlineData("starves.fj", "scheduler=shared-queue")]
    public async Task Trace_OfTheLab_IsThatOfTheCommandLine(string demo, string setup)
    {
        LabProgram program = DemoPrograms.Find(demo)!;
        Setup choices = Setup.Read(setup);
        var export = new RunExport(await Make(new(program, choices)));

        // As RunVerb does it: the program is called by its file's name, without folders.
        FjProgram read = ProgramReader.Read(Path.GetFileName(demo), program.Text).Value!;
        BoundProgram bound = read.Bind(new(
            choices.Parameters, new TextDataSource(program.Data), choices.Seed, EvaluationLimits.Default)).Value!;
        Trace trace = Simulator.Record(bound, choices.ToSettings()).Trace!;
        using MemoryStream csv = new(), parquet = new();
        TraceCsv.Write(trace, csv);
        await TraceParquet.WriteAsync(trace, parquet, TestContext.Current.CancellationToken);

        Assert.Equal(csv.ToArray(), export.Csv());
        Assert.Equal(parquet.ToArray(), await export.ParquetAsync());
    }

    [Fact]
    public async Task Names_SayProgramAndStep()
    {
        var export = new RunExport(await Make(new(DemoPrograms.Find(DemoPrograms.First)!, Setup.Plain)));
        Assert.Equal("count.parquet", export.NameOf(".parquet"));
        Assert.Equal("count-step-40.svg", export.NameOf(40, ".svg"));
    }

    [Fact]
    public async Task Names_OfHostilePrograms_AreNamesOfFiles()
    {
        LabProgram first = DemoPrograms.Find(DemoPrograms.First)!;
        var export = new RunExport(await Make(new(first with { Name = "../..\\a b:<c>\u202E.fj" }, Setup.Plain)));
        Assert.Equal("a-b--c.csv", export.NameOf(".csv"));
    }

    [Fact]
    public async Task Svg_IsWellFormedAndTold()
    {
        var export = new RunExport(await Make(new(DemoPrograms.Find(DemoPrograms.First)!, Setup.Plain)));
        var svg = XDocument.Parse(export.Svg(12, Style.Light, DrawingWords.English));
        XNamespace ns = "http://www.w3.org/2000/svg";
        Assert.Contains("step 12", svg.Root!.Element(ns + "title")!.Value, StringComparison.Ordinal);
        Assert.NotEmpty(svg.Root.Element(ns + "desc")!.Value);
        Assert.Equal(export.Svg(12, Style.Light, DrawingWords.English),
            export.Svg(12, Style.Light, DrawingWords.English));
    }

    [Fact]
    public async Task Measures_AreThoseOfTheRun()
    {
        LabRun run = await Make(new(DemoPrograms.Find(DemoPrograms.First)!, Setup.Read("workers=3")));
        using var json = JsonDocument.Parse(new RunExport(run).Measures());
        Assert.Equal(run.Measures.Makespan, json.RootElement.GetProperty("makespan").GetInt64());
        Assert.Equal((long)run.Measures.Steals, json.RootElement.GetProperty("steals").GetInt64());
        Assert.Equal("workers=3", json.RootElement.GetProperty("setup").GetString());
    }

    private static async Task<LabRun> Make(Inputs inputs)
    {
        Parsed<LabRun> made = await new RunMaker(new RecordingPage()).MakeAsync(inputs, _ => { }, default);
        Assert.True(made.IsValid, string.Join("; ", made.Diagnostics.Select(one => one.What)));
        return made.Value;
    }
}
