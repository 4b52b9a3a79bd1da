using System.Collections.Immutable;
using System.CommandLine;
using Rookery.CommandLine;
using Rookery.Figures;
using Rookery.Files;
using Rookery.Json;
using Rookery.Notation;
using Rookery.Programs;
using Rookery.Reports;
using Rookery.Simulation;
using Rookery.Terminal;
using Rookery.Traces;

namespace Rookery.Commands;

/// <summary><c>run FILE</c>: one run of a program, in sentences, measures and laws.</summary>
internal sealed class RunVerb : Verb
{
    /// <summary>A run that starved is made again to name its tasks, unless it is longer than this.</summary>
    private const long EventsToNameMax = 2_000_000;

    private readonly RunOptions _run;
    private readonly LookOptions _look;
    private readonly Option<string?> _steps;
    private readonly Option<string?> _trace;
    private readonly Option<string?> _figures;
    private readonly Option<bool> _json;

    /// <summary>Makes the command.</summary>
    public RunVerb()
        : this(new(), new(), new("--steps") { HelpName = "[FROM..TO]", Arity = ArgumentArity.ZeroOrOne })
    {
    }

    private RunVerb(RunOptions run, LookOptions look, Option<string?> steps)
        : this(
            run, look, steps,
            OptionValues.Text("--trace", "FILE", "Write every event into a file: .parquet or .csv."),
            OptionValues.Text("--figures", "FOLDER", "Write all figures, each as SVG, PNG and PDF."),
            OptionValues.Flag("--json", "One object for other programs (docs/json.md), and nothing else."))
    {
    }

    private RunVerb(
        RunOptions run, LookOptions look, Option<string?> steps, Option<string?> trace, Option<string?> figures,
        Option<bool> json)
        : base(
            "run", "Run a program on simulated workers and say what happened.", Arguments.Program,
            [
                run.Program, run.OnWhat, run.How, new("What comes out", [steps, trace, figures, json]), look.Group,
                run.Limits,
            ])
    {
        steps.Description = "A sentence for each step, or for those of a range.";
        (_run, _look, _steps, _trace, _figures, _json) = (run, look, steps, trace, figures, json);
    }

    /// <inheritdoc/>
    public override string Heading => "Run and measure";

    /// <inheritdoc/>
    public override ImmutableArray<(string Line, string Use)> Examples =>
    [
        ("run count.fj --workers 8 --machine unit", "Sentences to read aloud, all measures, and the laws beside them."),
        ("run count.fj --scheduler shared-queue", "And if there were one queue for all?"),
        ("run count.fj --thief-takes newest --set grain=50", "And if thieves took the newest, in a coarser program?"),
        ("run count.fj --steps 1..20", "What happened and why, step by step."),
        ("run count.fj --trace run.parquet --figures slides", "Every event for a notebook, every figure for a talk."),
    ];

    /// <inheritdoc/>
    public override ExitCode Execute(ParseResult parsed, App app)
    {
        bool isJson = parsed.GetValue(_json);
        if (isJson && parsed.IsGiven(_steps))
            throw new InputException(AppErrors.Exclusive("--json", "--steps", "one is for programs, one for people"));
        StepRange? steps = parsed.IsGiven(_steps) ? StepRange.Parse(parsed.GetValue(_steps)) : null;
        string? tracePath = parsed.GetValue(_trace);
        string? folder = parsed.GetValue(_figures);
        if (tracePath is not null)
            TraceFile.CheckName(tracePath);
        FigureLook look = _look.Look(parsed);
        RunSettings settings = _run.Settings(parsed);
        BoundProgram program = ProgramFile.Load(parsed.GetValue(Argument!)!, _run, parsed, app);

        bool isRecorded = tracePath is not null || folder is not null || steps is not null;
        RunResult run = ProgramRun.Make(program, settings, isRecorded, EventsToNameMax, app);
        if (tracePath is not null)
            TraceFile.Write(tracePath, run.Trace!);
        if (folder is not null)
            WriteFigures(folder, run, program, settings, look, _run.SchedulerName(parsed), app);
        if (isJson)
        {
            app.Console.Out.Write(RunJson.Of(run));
            return ExitCode.Done;
        }

        Say(run, steps, tracePath, folder, app);
        return ExitCode.Done;
    }

    private static void Say(RunResult run, StepRange? steps, string? tracePath, string? folder, App app)
    {
        TextWriter output = app.Console.Out;
        if (steps is not null)
        {
            StepList.Write(app.Console, run.Trace!, steps, app.Stop);
            output.WriteLine();
        }

        ReportWriter.Write(app.Console, RunReport.Of(run, run.Trace?.Labels ?? TextLabels.None));
        if (tracePath is not null || folder is not null)
            output.WriteLine();
        if (tracePath is not null)
            output.WriteLine($"Trace: {tracePath}");
        if (folder is not null)
            output.WriteLine($"Figures: {Path.Combine(folder, "*")} ({string.Join(", ", FigureWords.Words)})");
    }

    internal static void WriteFigures(
        string folder, RunResult run, BoundProgram program, RunSettings settings, FigureLook look, string scheduler,
        App app)
    {
        using ProgressLine progress = app.StartProgress();
        FigureFolder.Write(
            folder, run.Trace!, () => SpeedUpSweep.Of(program, settings, scheduler, progress), look, progress);
    }
}
