using System.Collections.Immutable;
using System.CommandLine;
using Rookery.CommandLine;
using Rookery.Experiments;
using Rookery.Experiments.Claims;
using Rookery.Figures;
using Rookery.Files;
using Rookery.Json;
using Rookery.Notation;
using Rookery.Programs;
using Rookery.Reports;
using Rookery.Simulation;
using Rookery.Sweeps;
using Rookery.Terminal;
using Rookery.Traces.Measuring;

namespace Rookery.Commands;

/// <summary><c>compare FILE</c>: a program run with each of several choices, on the same seeds.</summary>
internal sealed class CompareVerb : Verb
{
    private const int SeedsPlain = 20;

    private readonly RunOptions _run;
    private readonly LookOptions _look;
    private readonly CompareOptions _compare;

    /// <summary>Makes the command.</summary>
    public CompareVerb()
        : this(new(), new(), new())
    {
    }

    private CompareVerb(RunOptions run, LookOptions look, CompareOptions compare)
        : base(
            "compare", "Run a program with each of several choices, and compare.", Arguments.Program,
            [compare.What, compare.Out, look.Group, .. run.All]) =>
        (_run, _look, _compare) = (run, look, compare);

    /// <inheritdoc/>
    public override string Heading => "Run and measure";

    /// <inheritdoc/>
    public override ImmutableArray<(string Line, string Use)> Examples =>
    [
        ("compare count.fj --vary victim=random,lowest --measure lostRaces", "Do random victims collide less?"),
        (
            "compare count.fj --vary workers=1..16 --vary scheduler=work-stealing,shared-queue --figure curve.png",
            "Two choices at once, with a figure."),
        (
            "compare count.fj --vary thief-takes=newest,oldest --claim lower --least 10% --seeds 200",
            "Is the second lower than the first by a tenth? The exit code says."),
        ("compare count.fj --vary grain=1..1024*2 --data grain.parquet", "Every run as a row, for a notebook."),
    ];

    /// <inheritdoc/>
    public override ExitCode Execute(ParseResult parsed, App app)
    {
        CompareRequest request = _compare.Read(parsed);
        FigureLook look = _look.Look(parsed);
        Sweep sweep = SweepOf(parsed, request, app);
        if (request.Rule is not null && sweep.Treatments.Length != 2)
            throw new InputException(AppErrors.ClaimNeedsTwo(sweep.Treatments.Length));
        ImmutableArray<CellResult> cells = Compute(sweep, request, app);
        ImmutableArray<TreatmentSummary> summaries =
            TreatmentSummary.Of(sweep, cells, request.Measure, request.Confidence);
        ClaimResult? claim = request.Rule is { } rule ? ClaimOf(sweep, request.Measure, rule).Decide(cells) : null;
        string unit = sweep.Treatments[0].Setup.ToSettings().Machine.TimeUnit;
        if (request.Figure is { } figure)
        {
            using var file = new FigureFile(look);
            file.Write(
                figure, SweepFigure.Draw(sweep, summaries, request.Measure, unit, request.Confidence, look.Frame));
        }

        if (parsed.GetValue(_compare.Json))
            app.Console.Out.Write(SweepJson.Of(sweep, summaries, request.Measure, request.Confidence, claim));
        else
            Say(SweepReport.Of(sweep, summaries, request.Measure, unit, request.Confidence, claim), request, app);
        return claim?.Verdict == Verdict.Refuted ? ExitCode.No : ExitCode.Done;
    }

    private static void Say(Report report, CompareRequest request, App app)
    {
        ReportWriter.Write(app.Console, report);
        if (request.Data is not null || request.Figure is not null)
            app.Console.Out.WriteLine();
        if (request.Data is not null)
            app.Console.Out.WriteLine($"Every run: {request.Data}");
        if (request.Figure is not null)
            app.Console.Out.WriteLine($"Figure: {request.Figure}");
    }

    private Sweep SweepOf(ParseResult parsed, CompareRequest request, App app)
    {
        Setup plain = _run.Setup(parsed);
        string path = parsed.GetValue(Argument!)!;
        FjProgram program = ProgramFile.Read(path, app);
        var data = new FolderData(Path.GetDirectoryName(Path.GetFullPath(path))!);
        Subject subject = new Subject(program, data, _run.Evaluation(parsed), _run.RunLimits(parsed))
            .WithDataInMemory();

        // What is wrong with the program itself is said of the program, not of the first combination.
        _ = program.Bind(new(plain.Parameters, subject.Data, plain.Seed, subject.Evaluation)).OrThrow();
        ImmutableArray<Factor> factors = [.. request.Vary.Select(v => Factor.Parse(v, subject.Parameters))];
        return Sweep.Of(subject, plain, factors, request.Seeds ?? SeedsPlain);
    }

    private static ImmutableArray<CellResult> Compute(Sweep sweep, CompareRequest request, App app)
    {
        using ProgressLine progress = app.StartProgress();
        if (request.Data is null)
            return SweepRunner.Run(sweep, [], request.Threads, null, progress, app.Stop);
        using SweepFile file = SweepFile.Open(request.Data, sweep);
        try
        {
            ImmutableArray<CellResult> cells =
                SweepRunner.Run(sweep, file.Done, request.Threads, file.Add, progress, app.Stop);
            file.Finish(cells);
            return cells;
        }
        catch (OperationCanceledException)
        {
            app.Console.Error.WriteLine(
                $"What is done is in {SweepFile.JournalOf(request.Data)}: the same command goes on from there.");
            throw;
        }
    }

    private static Claim ClaimOf(Sweep sweep, NamedMeasure measure, DecisionRule rule)
    {
        (Treatment first, Treatment second) = (sweep.Treatments[0], sweep.Treatments[1]);
        return new(
            "", sweep.Subject, (first.Label, first.Setup), (second.Label, second.Setup), measure, rule, sweep.FirstSeed,
            sweep.SeedCount);
    }
}
