using System.Collections.Immutable;
using System.CommandLine;
using Rookery.Checking;
using Rookery.CommandLine;
using Rookery.Drawing;
using Rookery.Figures;
using Rookery.Files;
using Rookery.Json;
using Rookery.Notation;
using Rookery.Reports;
using Rookery.Terminal;

namespace Rookery.Commands;

/// <summary><c>check FILE...</c>: every execution of deque algorithms and litmus tests.</summary>
internal sealed class CheckVerb : Verb
{
    private readonly CheckLimits _limits;
    private readonly LookOptions _look;
    private readonly Option<string?> _scenario;
    private readonly Option<bool> _outcomes;
    private readonly Option<string?> _figures;
    private readonly Option<string?> _out;
    private readonly Option<bool> _json;
    private readonly Argument<string[]> _files = Arguments.Algorithms;

    /// <summary>Makes the command.</summary>
    public CheckVerb()
        : this(
            new(), new(),
            OptionValues.Text("--scenario", "NAME", "One scenario of the file; all by default."),
            OptionValues.Flag("--list-outcomes", "All ways in which a scenario can end."),
            OptionValues.Text("--figures", "FOLDER", "Draw each execution that shows something, as SVG, PNG and PDF."),
            OptionValues.Text("--out", "FILE", "Draw the first such execution: .svg, .png or .pdf; - for SVG."),
            OptionValues.Flag("--json", "One object for other programs (docs/json.md), and nothing else."))
    {
    }

    private CheckVerb(
        CheckLimits limits, LookOptions look, Option<string?> scenario, Option<bool> outcomes,
        Option<string?> figures, Option<string?> target, Option<bool> json)
        : base(
            "check", "Check every execution of a deque algorithm, under weak memory too.", null,
            [
                new("What is checked", [.. limits.What, scenario]),
                new("What comes out", [outcomes, figures, target, json]), look.Group, limits.Limits,
            ])
    {
        (_limits, _look, _scenario, _outcomes) = (limits, look, scenario, outcomes);
        (_figures, _out, _json) = (figures, target, json);
        Command.Add(_files);
    }

    /// <inheritdoc/>
    public override string Heading => "Check a deque";

    /// <inheritdoc/>
    public override Argument? Taken => _files;

    /// <inheritdoc/>
    public override ImmutableArray<(string Line, string Use)> Examples =>
    [
        ("check deque.dq --memory sc,tso", "Does it hold in every execution? If not, the shortest one that fails."),
        ("check deque.dq --scenario \"one owner, two thieves\"", "One of its scenarios only."),
        ("check sb.dq --memory tso --list-outcomes", "Can that outcome happen, and which others?"),
        ("check deque.dq --memory ra --out witness.png", "The execution as a figure."),
    ];

    /// <inheritdoc/>
    public override ExitCode Execute(ParseResult parsed, App app)
    {
        CheckOptions options = _limits.Options(parsed);
        ImmutableArray<MemoryModel> models = _limits.Models(parsed);
        FigureLook look = _look.Look(parsed);
        bool isJson = parsed.GetValue(_json);
        string? target = parsed.GetValue(_out), folder = parsed.GetValue(_figures);
        if (target is not null and not "-")
            FigureFile.CheckName(target);
        if (target == "-" && isJson)
            throw new InputException(AppErrors.Exclusive("--json", "--out -", "both write to standard output"));

        // All files are read before any is checked: a slip in the last one should not cost an hour.
        string[] paths = parsed.GetValue(_files)!;
        var algorithms = paths.Select(path => AlgorithmFile.Load(path, app)).ToImmutableArray();
        var scenarios = ScenariosOf(algorithms, parsed.GetValue(_scenario), paths);
        var found = new List<CheckedScenario>();
        for (int at = 0; at < algorithms.Length; at++)
        {
            app.Source = algorithms[at].Source;
            foreach (string scenario in scenarios[at])
            {
                foreach (MemoryModel model in models)
                {
                    var one = Check(paths[at], algorithms[at], scenario, options with { Memory = model }, parsed, app);
                    found.Add(one);
                    if (!isJson && target != "-")
                        CheckText.Write(app.Console, one, parsed.GetValue(_outcomes));
                }
            }
        }

        Draw([.. found], target, folder, look, isJson, app);
        if (isJson)
            app.Console.Out.Write(CheckJson.Of([.. found], parsed.GetValue(_outcomes)));
        return CodeOf(found);
    }

    private static ImmutableArray<ImmutableArray<string>> ScenariosOf(
        ImmutableArray<Algorithm> algorithms, string? asked, string[] paths)
    {
        if (asked is null)
            return [.. algorithms.Select(one => one.Scenarios)];
        for (int at = 0; at < paths.Length; at++)
        {
            if (!algorithms[at].Scenarios.Contains(asked))
                throw new InputException(AppErrors.NoScenario(paths[at], asked, algorithms[at].Scenarios));
        }

        return [.. algorithms.Select(_ => ImmutableArray.Create(asked))];
    }

    private CheckedScenario Check(
        string path, Algorithm algorithm, string scenario, CheckOptions options, ParseResult parsed, App app)
    {
        using ProgressLine progress = app.StartProgress();
        long start = app.Clock.GetTimestamp();
        long? limit = _limits.Seconds(parsed);
        CheckResult result = Checker.Check(algorithm, scenario, options with
        {
            Progress = now =>
            {
                double seconds = app.Clock.GetElapsedTime(start).TotalSeconds;
                progress.Report(now.States, CheckText.ProgressOf(now, seconds));
                return limit is null || seconds < limit;
            },
        });
        return new(path, result, app.Clock.GetElapsedTime(start).TotalSeconds);
    }

    private static void Draw(
        ImmutableArray<CheckedScenario> found, string? target, string? folder, FigureLook look, bool isJson, App app)
    {
        ImmutableArray<CheckedScenario> shown = [.. found.Where(one => one.Result.Witness is not null)];
        using var file = new FigureFile(look);
        if (target is not null)
        {
            if (shown.IsEmpty)
                throw new InputException(AppErrors.NoWitness());
            Scene scene = WitnessFigure.Of(shown[0], look.Frame);
            if (target == "-")
                app.Console.Out.Write(file.SvgOf(scene));
            else
                file.Write(target, scene);
            if (target != "-" && !isJson)
                app.Console.Out.WriteLine($"{target}: {scene.Title}");
        }

        if (folder is null)
            return;
        WitnessFigure.WriteAll(folder, shown, file, look.Frame);
        if (!isJson && target != "-")
            app.Console.Out.WriteLine($"Figures: {Path.Combine(folder, "*")} ({shown.Length})");
    }

    private static ExitCode CodeOf(List<CheckedScenario> found) =>
        found.Any(one => one.Result.Verdict == Verdict.Broken) ? ExitCode.No
        : found.Any(one => one.Result.Verdict == Verdict.OutOfBudget) ? ExitCode.Limit
        : ExitCode.Done;
}
