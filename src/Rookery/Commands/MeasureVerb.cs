using System.Collections.Immutable;
using System.CommandLine;
using Rookery.CommandLine;
using Rookery.Files;
using Rookery.Json;
using Rookery.Measuring;
using Rookery.Notation;
using Rookery.Programs;
using Rookery.Reports;
using Rookery.Terminal;

namespace Rookery.Commands;

/// <summary><c>measure FILE</c>: a program on real workers, with repeats and the spread.</summary>
internal sealed class MeasureVerb : Verb
{
    private static readonly ImmutableArray<string> s_runtimes = ["pool", "tasks"];

    private readonly RunOptions _run;
    private readonly MeasureOptions _measure;
    private readonly Option<string?> _on;
    private readonly Option<string?> _trace;
    private readonly Option<bool> _json;

    /// <summary>Makes the command.</summary>
    public MeasureVerb()
        : this(
            new(), new(),
            OptionValues.Text("--on", string.Join('|', s_runtimes),
                "Our pool (the default), or the runtime's own task library."),
            OptionValues.Text("--trace", "FILE", "Record one more run into a file: .parquet or .csv."),
            OptionValues.Flag("--json", "One object for other programs (docs/json.md), and nothing else."))
    {
    }

    private MeasureVerb(
        RunOptions run, MeasureOptions measure, Option<string?> on, Option<string?> trace, Option<bool> json)
        : base(
            "measure", "Run a program on this computer's own threads and take the time.", Arguments.Program,
            [
                run.Program, new("On what", [run.Workers, on]), run.How, measure.Deques, measure.Clock,
                new("What comes out", [trace, json]), new("How far at most", run.EvaluationLimits),
            ]) =>
        (_run, _measure, _on, _trace, _json) = (run, measure, on, trace, json);

    /// <inheritdoc/>
    public override string Heading => "Run for real";

    /// <inheritdoc/>
    public override ImmutableArray<(string Line, string Use)> Examples =>
    [
        ("measure count.fj", "On as many workers as there are processors: the times, and what they should be."),
        ("measure count.fj --trace real.parquet", "And what every worker did, for draw, audit and notebooks."),
        ("measure count.fj --on tasks --trace tasks.csv", "The same on the runtime's own task library."),
        ("measure count.fj --deque one-lock --unit 100", "With one lock, and ten times finer work."),
    ];

    /// <inheritdoc/>
    public override ExitCode Execute(ParseResult parsed, App app)
    {
        string? tracePath = parsed.GetValue(_trace);
        if (tracePath is not null)
            TraceFile.CheckName(tracePath);
        string on = parsed.GetValue(_on) ?? "pool";
        if (!s_runtimes.Contains(on))
            throw new InputException(AppErrors.UnknownWord("--on", on, s_runtimes));
        MeasureSettings settings = _measure.Settings(parsed, _run, Environment.ProcessorCount) with
        {
            IsOnTasks = on == "tasks",
            IsRecorded = tracePath is not null,
        };
        BoundProgram program = ProgramFile.Load(parsed.GetValue(Argument!)!, _run, parsed, app);
        Measurement measured;
        using (ProgressLine progress = app.StartProgress())
            measured = Measurer.Measure(program, settings, runs => progress.Report(runs, "runs"), app.Stop);
        if (tracePath is not null)
            TraceFile.Write(tracePath, measured.Trace!);
        if (parsed.GetValue(_json))
        {
            app.Console.Out.Write(MeasureJson.Of(program, settings, measured));
            return ExitCode.Done;
        }

        ReportWriter.Write(app.Console, MeasureReport.Of(program, settings, measured));
        if (tracePath is not null)
            app.Console.Out.WriteLine($"\nTrace: {tracePath}");
        return ExitCode.Done;
    }
}
