using System.Collections.Immutable;
using System.CommandLine;
using Rookery.CommandLine;
using Rookery.Figures;
using Rookery.Files;
using Rookery.Notation;
using Rookery.Programs;
using Rookery.Reports;
using Rookery.Simulation;
using Rookery.Traces;

namespace Rookery.Commands;

/// <summary><c>demo</c>, and what happens when nothing is asked for: the seabird survey, told and drawn.</summary>
internal sealed class DemoVerb : Verb
{
    private static readonly string DemoProgram = Path.Combine("seabird", "count-uneven.fj");

    private readonly RunOptions _run;
    private readonly Option<string?> _out;

    /// <summary>Makes the command.</summary>
    public DemoVerb()
        : this(new(), OptionValues.Text("--out", "FOLDER", "Where the figures go; out by default."))
    {
    }

    private DemoVerb(RunOptions run, Option<string?> target)
        : base(
            "demo", "Run the demo program, a survey of seabirds, and draw it.", null,
            [new("What comes out", [target])]) =>
        (_run, _out) = (run, target);

    /// <inheritdoc/>
    public override string Heading => "Begin";

    /// <inheritdoc/>
    public override ImmutableArray<(string Line, string Use)> Examples =>
        [("demo --out slides", "The figures of the demo program, into a folder of your own.")];

    /// <inheritdoc/>
    public override ExitCode Execute(ParseResult parsed, App app)
    {
        string folder = parsed.GetValue(_out) ?? "out";
        string path = Path.Combine(app.LessonsFolder, DemoProgram);
        if (!File.Exists(path))
            throw new InputException(AppErrors.NoDemo(path));
        var settings = new RunSettings { Workers = 4, Machine = Machine.Unit };
        BoundProgram program = ProgramFile.Load(path, _run, parsed, app);
        RunResult run = ProgramRun.Make(program, settings, isRecorded: true, 0, app);
        var look = new FigureLook(new(), Drawing.Style.Light, 2);
        RunVerb.WriteFigures(folder, run, program, settings, look, "work-stealing", app);

        Report report = RunReport.Of(run, run.Trace?.Labels ?? TextLabels.None);
        ReportWriter.WriteSentences(app.Console, report.Sentences);
        WriteNext(app, folder, Shown(path));
        return ExitCode.Done;
    }

    private static void WriteNext(App app, string folder, string path)
    {
        TextWriter output = app.Console.Out;
        output.WriteLine();
        output.WriteLine($"The figures, each as SVG, PNG and PDF, are in {folder}{Path.DirectorySeparatorChar}:");
        foreach (FigureKind kind in FigureWords.All)
            output.WriteLine($"  {FigureWords.WordOf(kind),-13}{MeaningOf(kind)}");
        output.WriteLine();
        output.WriteLine("Try next:");
        foreach (string line in (string[])
            [
                $"run {path} --machine unit",
                $"run {path} --machine unit --steps 1..20",
                $"run {path} --machine unit --scheduler shared-queue",
                $"draw {path} --machine unit --moment \"last steal\" --out steal.png",
                "--help",
            ])
            output.WriteLine($"  {app.CommandName} {line}");
    }

    private static string MeaningOf(FigureKind kind) => kind switch
    {
        FigureKind.Deques => "what every worker and every deque holds at the first steal",
        FigureKind.Timeline => "who did what and when, with the steals as links",
        FigureKind.Tree => "which worker ran which task",
        FigureKind.StolenWork => "how much work a steal moves",
        FigureKind.Steals => "who stole from whom",
        FigureKind.SpeedUp => "speed-up against workers, with the laws as lines",
    };

    private static string Shown(string path)
    {
        string relative = Path.GetRelativePath(Environment.CurrentDirectory, path);
        return relative.StartsWith("..", StringComparison.Ordinal) ? path : relative;
    }
}
