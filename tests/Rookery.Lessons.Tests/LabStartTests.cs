using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using Rookery.Programs;
using Rookery.Simulation;
using Rookery.Traces.Measuring;

namespace Rookery.Lessons.Tests;

/// <summary>From an exhibit to the lab: a link, and a file that leads to the very run of the page.</summary>
public sealed class LabStartTests
{
    private const string File = "parts/lesson/rk-exhibit-1.lab.json";

    [Theory]
    [InlineData("program: count.fj")]
    [InlineData("program: count.fj\nworkers: 7\nmachine: unit\nseed: 3\nset: { grain: 20 }")]
    [InlineData("program: count.fj\nscheduler: work-first\nmachine: { base: typical, wake: 50, cores: 2 }")]
    [InlineData("program: count.fj\nworkers: 3\nscheduler: { base: shared-queue, when-idle: sleep, patience: 9 }")]
    [InlineData("program: count.fj\nscheduler: { victim: lowest, thief-takes: newest }")]
    public void Start_MadeAgain_IsTheRunOfThePage(string fields)
    {
        var built = Built.Of(Built.Exhibit(fields + "\nstop: first fork"), hasLab: true);
        Assert.Empty(built.Said);
        using var json = JsonDocument.Parse(built.Text(File));
        JsonElement root = json.RootElement;

        Setup setup = Setup.Read(root.GetProperty("setup").GetString()!);
        var data = root.GetProperty("data").EnumerateObject().ToImmutableSortedDictionary(
            one => one.Name, one => one.Value.GetString()!, StringComparer.Ordinal);
        BoundProgram program = ProgramReader
            .Read(root.GetProperty("name").GetString()!, root.GetProperty("text").GetString()!).Value!
            .Bind(new(setup.Parameters, new TextDataSource(data), setup.Seed, EvaluationLimits.Default)).Value!;
        RunResult run = Simulator.Measure(program, setup.ToSettings());

        Assert.Equal("rookery-lab-1", root.GetProperty("format").GetString());
        foreach (string name in (string[])["makespan", "steals", "probes", "lostRaces", "tasks", "events"])
        {
            var shown = built.Results[0].Measures.Single(one => one.Name == name);
            Ratio made = MeasureNames.Find(name)!.ValueOf(run.Measures, run.Starvation is not null);
            Assert.Equal(
                shown.Denominator == "0"
                    ? 0
                    : double.Parse(shown.Numerator, CultureInfo.InvariantCulture)
                        / double.Parse(shown.Denominator, CultureInfo.InvariantCulture),
                made.ToDouble());
            Assert.Equal(shown.Denominator != "0", made.HasValue);
        }

        Assert.Equal(built.Results[0].Figures.First(figure => figure.Step >= 0).Step,
            root.GetProperty("step").GetInt32());
    }

    [Fact]
    public void Page_WithLab_LinksToItsFile()
    {
        var built = Built.Of(Built.Exhibit("program: count.fj\nstop: first steal"), hasLab: true);
        using IDocument page = new HtmlParser().ParseDocument(built.Page);
        string address = page.QuerySelector("a.rk-lab")!.GetAttribute("href")!;

        Assert.StartsWith("lab/index.html#from=../" + File + "&step=", address, StringComparison.Ordinal);
    }

    [Fact]
    public void Page_WithoutLab_HasNeitherLinkNorFile()
    {
        var built = Built.Of(Built.Exhibit("program: count.fj\nstop: first steal"));
        Assert.DoesNotContain("rk-lab", built.Page, StringComparison.Ordinal);
        Assert.DoesNotContain(built.Files, file => file.Path.EndsWith(".lab.json", StringComparison.Ordinal));
    }
}
