using System.Collections.Immutable;
using System.CommandLine;
using Rookery.CommandLine;
using Rookery.Drawing;
using Rookery.Figures;
using Rookery.Files;
using Rookery.Notation;
using Rookery.Programs;
using Rookery.Simulation;
using Rookery.Terminal;
using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Commands;

/// <summary><c>draw FILE|TRACE</c>: one figure of a run.</summary>
internal sealed class DrawVerb : Verb
{
    private readonly RunOptions _run;
    private readonly LookOptions _look;
    private readonly Option<string?> _view;
    private readonly Option<string?> _step;
    private readonly Option<string?> _moment;
    private readonly Option<string?> _out;

    /// <summary>Makes the command.</summary>
    public DrawVerb()
        : this(
            new(), new(),
            OptionValues.Text("--view", string.Join('|', FigureWords.Words), "What to draw; deques by default."),
            OptionValues.Text("--step", "NUMBER", "Deques just after that step, counted as run --steps does."),
            OptionValues.Text(
                "--moment", "WORDS",
                "Deques at a moment: \"first steal\", \"worker 2 sleeps\", \"line 9\", \"time 500\"."),
            OptionValues.Text(
                "--out", "FILE",
                "Where to: .svg, .png or .pdf; - for SVG on standard output. By default the view's name."))
    {
    }

    private DrawVerb(
        RunOptions run, LookOptions look, Option<string?> view, Option<string?> step, Option<string?> moment,
        Option<string?> target)
        : base(
            "draw", "Draw one figure of a run.", Arguments.ProgramOrTrace,
            [new("What is drawn", [view, step, moment, target]), look.Group, .. run.All]) =>
        (_run, _look, _view, _step, _moment, _out) = (run, look, view, step, moment, target);

    /// <inheritdoc/>
    public override string Heading => "Look at a run";

    /// <inheritdoc/>
    public override ImmutableArray<(string Line, string Use)> Examples =>
    [
        (
            "draw count.fj --moment \"first steal\" --out steal.svg",
            "What every worker and every deque holds at that moment."),
        ("draw run.parquet --view timeline --out timeline.pdf", "All workers over time, from a trace."),
        ("draw count.fj --view speed-up --style grey --out curve.png", "Speed-up with the laws as lines, for print."),
    ];

    /// <inheritdoc/>
    public override ExitCode Execute(ParseResult parsed, App app)
    {
        string path = parsed.GetValue(Argument!)!;
        string word = parsed.GetValue(_view) ?? FigureWords.WordOf(FigureKind.Deques);
        FigureKind kind = FigureWords.Parse("--view", word);
        string target = parsed.GetValue(_out) ?? word + ".svg";
        if (target != "-")
            FigureFile.CheckName(target);
        if (parsed.IsGiven(_step) && parsed.IsGiven(_moment))
            throw new InputException(AppErrors.Exclusive("--step", "--moment", "each names a moment"));
        FigureLook look = _look.Look(parsed);

        using ProgressLine progress = app.StartProgress();
        (Trace trace, Func<SpeedUpData>? curve) = TraceFile.IsTrace(path)
            ? (ReadTrace(path, parsed, app), null)
            : MakeTrace(path, parsed, app, progress);
        Scene scene = new FigureMaker(trace, curve).Draw(kind, StepOf(trace, parsed), look.Frame);
        using var file = new FigureFile(look);
        if (target == "-")
        {
            app.Console.Out.Write(file.SvgOf(scene));
            return ExitCode.Done;
        }

        file.Write(target, scene);
        app.Console.Out.WriteLine($"{target}: {scene.Title}");
        return ExitCode.Done;
    }

    private Trace ReadTrace(string path, ParseResult parsed, App app)
    {
        Option? given = _run.All.SelectMany(group => group.Options).FirstOrDefault(parsed.IsGiven);
        if (given is not null)
            throw new InputException(AppErrors.NotForTraces(given.Name));
        app.Source = new SourceText(path, "");
        return TraceFile.Read(path);
    }

    private (Trace Trace, Func<SpeedUpData> Curve) MakeTrace(
        string path, ParseResult parsed, App app, ProgressLine progress)
    {
        RunSettings settings = _run.Settings(parsed);
        BoundProgram program = ProgramFile.Load(path, _run, parsed, app);
        RunResult run = Simulator.Record(program, settings, events => progress.Report(events, "events"));
        return (run.Trace!, () => SpeedUpSweep.Of(program, settings, _run.SchedulerName(parsed), progress));
    }

    private int StepOf(Trace trace, ParseResult parsed)
    {
        if (parsed.WholeOf(_step, 0, int.MaxValue) is { } step)
        {
            return step < trace.Count
                ? (int)step
                : throw new InputException(AppErrors.NoSuchStep(step, trace.Count));
        }

        if (parsed.GetValue(_moment) is not { } name)
            return TellingMoment.Of(trace);
        MomentSteps steps = Moments.Find(trace, name);
        return steps.Error is { } error ? throw new InputException(error) : steps.Steps[0];
    }
}
