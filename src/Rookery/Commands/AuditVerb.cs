using System.Collections.Immutable;
using System.CommandLine;
using Rookery.CommandLine;
using Rookery.Files;
using Rookery.Json;
using Rookery.Notation;
using Rookery.Reports;
using Rookery.Traces;

namespace Rookery.Commands;

/// <summary><c>audit TRACE</c>: whether a trace is lawful, from the trace alone.</summary>
internal sealed class AuditVerb : Verb
{
    private const int FindingsMax = 1_000_000;

    private readonly Option<string?> _findings;
    private readonly Option<bool> _json;

    /// <summary>Makes the command.</summary>
    public AuditVerb()
        : this(
            OptionValues.Text("--findings", "NUMBER", "Findings listed at most; 100 by default, all are counted."),
            OptionValues.Flag("--json", "One object for other programs (docs/json.md), and nothing else."))
    {
    }

    private AuditVerb(Option<string?> findings, Option<bool> json)
        : base(
            "audit", "Prove from a trace alone that its run was lawful, or say where it was not.", Arguments.Trace,
            [new("What comes out", [findings, json])]) =>
        (_findings, _json) = (findings, json);

    /// <inheritdoc/>
    public override string Heading => "Look at a run";

    /// <inheritdoc/>
    public override ImmutableArray<(string Line, string Use)> Examples =>
    [
        ("audit run.parquet", "Is the run lawful? The exit code says so too: 0 yes, 1 no."),
        ("audit pool.csv --findings 5 --json", "The first five findings, for another program."),
    ];

    /// <inheritdoc/>
    public override ExitCode Execute(ParseResult parsed, App app)
    {
        string path = parsed.GetValue(Argument!)!;
        int findings = (int)(parsed.WholeOf(_findings, 0, FindingsMax) ?? Audit.FindingsByDefault);
        app.Source = new SourceText(path, "");
        Trace trace = TraceFile.Read(path);
        AuditReport report = Audit.Of(trace, findings);
        if (parsed.GetValue(_json))
            app.Console.Out.Write(AuditJson.Of(path, report));
        else
            ReportWriter.Write(app.Console, AuditText.Of(path, trace.Inputs.TimeUnit, report));
        return report.IsLawful ? ExitCode.Done : ExitCode.No;
    }
}
