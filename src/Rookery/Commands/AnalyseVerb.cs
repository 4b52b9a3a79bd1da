using System.Collections.Immutable;
using System.CommandLine;
using Rookery.CommandLine;
using Rookery.Files;
using Rookery.Json;
using Rookery.Programs;
using Rookery.Reports;

namespace Rookery.Commands;

/// <summary><c>analyse FILE</c>: work and span of a program, whoever schedules it.</summary>
internal sealed class AnalyseVerb : Verb
{
    private readonly RunOptions _run;
    private readonly Option<string?> _limit;
    private readonly Option<bool> _json;

    /// <summary>Makes the command.</summary>
    public AnalyseVerb()
        : this(
            new(), OptionValues.Text("--limit-analysis", "NUMBER", "Instructions of the analysis itself."),
            OptionValues.Flag("--json", "One object for other programs (docs/json.md), and nothing else."))
    {
    }

    private AnalyseVerb(RunOptions run, Option<string?> limit, Option<bool> json)
        : base(
            "analyse", "Work, span and parallelism of a program, whoever schedules it.", Arguments.Program,
            [run.Program, new("What comes out", [json]), new("How far at most", [limit, .. run.EvaluationLimits])]) =>
        (_run, _limit, _json) = (run, limit, json);

    /// <inheritdoc/>
    public override string Heading => "Run and measure";

    /// <inheritdoc/>
    public override ImmutableArray<(string Line, string Use)> Examples =>
    [
        ("analyse count.fj", "How much work is there, and how much can more workers gain?"),
        ("analyse count.fj --set grain=1 --json", "The same of a finer program, for a notebook."),
    ];

    /// <inheritdoc/>
    public override ExitCode Execute(ParseResult parsed, App app)
    {
        long steps = parsed.WholeOf(_limit, 1, long.MaxValue) ?? AnalysisLimits.Default.Steps;
        BoundProgram program = ProgramFile.Load(parsed.GetValue(Argument!)!, _run, parsed, app);
        Analysis analysis = ProgramAnalysis.Analyse(program, AnalysisLimits.Default with { Steps = steps });
        if (parsed.GetValue(_json))
            app.Console.Out.Write(AnalysisJson.Of(analysis));
        else
            ReportWriter.Write(app.Console, AnalysisReport.Of(program.Name, analysis));
        return ExitCode.Done;
    }
}
