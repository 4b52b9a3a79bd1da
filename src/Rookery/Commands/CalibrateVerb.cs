using System.Collections.Immutable;
using System.CommandLine;
using System.Text;
using Rookery.CommandLine;
using Rookery.Files;
using Rookery.Measuring.Calibration;
using Rookery.Reports;
using Rookery.Terminal;

namespace Rookery.Commands;

/// <summary><c>calibrate</c>: what the pool's operations cost on this computer.</summary>
internal sealed class CalibrateVerb : Verb
{
    private readonly Option<string?> _out;
    private readonly Option<bool> _json;

    /// <summary>Makes the command.</summary>
    public CalibrateVerb()
        : this(
            OptionValues.Text("--out", "FILE", "Where to, a .json file; by default where this-computer is looked for."),
            OptionValues.Flag("--json", "The file's text on standard output, and nothing else."))
    {
    }

    private CalibrateVerb(Option<string?> target, Option<bool> json)
        : base(
            "calibrate", "Measure what forks, steals, sleeps and wakes cost on this computer.", null,
            [new("What comes out", [target, json])]) =>
        (_out, _json) = (target, json);

    /// <inheritdoc/>
    public override string Heading => "Run for real";

    /// <inheritdoc/>
    public override ImmutableArray<(string Line, string Use)> Examples =>
    [
        ("calibrate", "Some seconds; then --machine this-computer simulates this computer."),
        ("calibrate --out laptop.json", "Into a file, for --machine laptop.json on any computer."),
    ];

    /// <inheritdoc/>
    public override ExitCode Execute(ParseResult parsed, App app)
    {
        string path = parsed.GetValue(_out) ?? MachineFile.DefaultPath();
        MachineFile.CheckName(path);
        Calibration calibration;
        using (ProgressLine progress = app.StartProgress())
        {
            long done = 0;
            calibration = Calibrator.Measure(_ => progress.Report(++done, "costs"), app.Stop);
        }

        string text = calibration.ToJson();
        if (parsed.GetValue(_json) && !parsed.IsGiven(_out))
        {
            app.Console.Out.Write(text);
            return ExitCode.Done;
        }

        MachineFile.Write(path, Encoding.UTF8.GetBytes(text));
        if (parsed.GetValue(_json))
            app.Console.Out.Write(text);
        else
            ReportWriter.Write(app.Console, CalibrationReport.Of(calibration, path));
        return ExitCode.Done;
    }
}
