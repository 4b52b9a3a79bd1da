using System.Collections.Immutable;
using System.CommandLine;
using Rookery.CommandLine;
using Rookery.Files;
using Rookery.Json;
using Rookery.Measuring;
using Rookery.Measuring.Calibration;
using Rookery.Notation;
using Rookery.Programs;
using Rookery.Reports;
using Rookery.Simulation;
using Rookery.Terminal;

namespace Rookery.Commands;

/// <summary><c>predict FILE</c>: simulated on the calibrated machine, and measured, side by side.</summary>
internal sealed class PredictVerb : Verb
{
    private readonly RunOptions _run;
    private readonly MeasureOptions _measure;
    private readonly Option<string?> _machine;
    private readonly Option<bool> _json;

    /// <summary>Makes the command.</summary>
    public PredictVerb()
        : this(
            new(), new(),
            OptionValues.Text(
                "--machine", "FILE|this-computer", "What calibrate wrote; calibrated now when there is nothing yet."),
            OptionValues.Flag("--json", "One object for other programs (docs/json.md), and nothing else."))
    {
    }

    private PredictVerb(RunOptions run, MeasureOptions measure, Option<string?> machine, Option<bool> json)
        : base(
            "predict", "Put simulated and measured runs side by side.", Arguments.Program,
            [
                run.Program, new("On what", [run.Workers, machine]), run.How, measure.Deques, measure.Clock,
                new("What comes out", [json]), new("How far at most", run.EvaluationLimits),
            ]) =>
        (_run, _measure, _machine, _json) = (run, measure, machine, json);

    /// <inheritdoc/>
    public override string Heading => "Run for real";

    /// <inheritdoc/>
    public override ImmutableArray<(string Line, string Use)> Examples =>
    [
        ("predict count.fj", "For 1, 2, 4, … workers up to the processors: simulated, measured, and the error."),
        ("predict count.fj --workers 8", "Up to 8 workers, honest about those that share a processor."),
    ];

    /// <inheritdoc/>
    public override ExitCode Execute(ParseResult parsed, App app)
    {
        MeasureSettings settings = _measure.Settings(parsed, _run, Environment.ProcessorCount);
        BoundProgram program = ProgramFile.Load(parsed.GetValue(Argument!)!, _run, parsed, app);
        var predictions = ImmutableArray.CreateBuilder<Prediction>();
        Machine machine;
        using (ProgressLine progress = app.StartProgress())
        {
            machine = MachineOf(parsed, app);
            foreach (int workers in Counts(settings.Pool.Workers))
            {
                progress.Report(workers, "workers");
                predictions.Add(Predictor.Of(
                    program, machine, settings with { Pool = settings.Pool with { Workers = workers } }, app.Stop));
            }
        }

        if (parsed.GetValue(_json))
            app.Console.Out.Write(PredictJson.Of(program, machine, predictions.ToImmutable()));
        else
            ReportWriter.Write(app.Console, PredictReport.Of(program, machine, predictions.ToImmutable()));
        return ExitCode.Done;
    }

    /// <summary>1, 2, 4, and so on up to a number, and that number.</summary>
    internal static IEnumerable<int> Counts(int most)
    {
        for (int workers = 1; workers < most; workers *= 2)
            yield return workers;
        yield return most;
    }

    private Machine MachineOf(ParseResult parsed, App app)
    {
        if (parsed.GetValue(_machine) is { } name)
        {
            return name == MachineFile.ThisComputer || MachineFile.IsMachine(name)
                ? MachineFile.Read(name)
                : throw new InputException(AppErrors.BadEnding(name, "A machine", [".json"]));
        }

        return File.Exists(MachineFile.DefaultPath())
            ? MachineFile.Read(MachineFile.ThisComputer)
            : Calibrator.Measure(null, app.Stop).ToMachine();
    }
}
