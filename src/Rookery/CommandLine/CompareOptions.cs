using System.CommandLine;
using Rookery.Experiments;
using Rookery.Experiments.Claims;
using Rookery.Figures;
using Rookery.Notation;
using Rookery.Sweeps;
using Rookery.Traces.Measuring;

namespace Rookery.CommandLine;

/// <summary>The options of a comparison.</summary>
internal sealed class CompareOptions
{
    private readonly Option<string[]> _vary = OptionValues.Texts(
        "--vary", "NAME=LEVELS",
        "What varies: an option, a cost or a parameter, as in workers=1..16 or victim=random,lowest.");

    private readonly Option<string?> _measure = OptionValues.Text(
        "--measure", "NAME", "What is compared, by its name in docs/json.md; makespan by default.");

    private readonly Option<string?> _seeds =
        OptionValues.Text("--seeds", "NUMBER",
            "Runs of each combination; 20 by default. The first has the seed of --seed.");

    private readonly Option<string?> _confidence =
        OptionValues.Text("--confidence", "PERCENT", "Of intervals; 95% by default.");

    private readonly Option<string?> _claim = OptionValues.Text(
        "--claim", "lower|higher|same", "Say this of the second of two combinations, and decide it.");

    private readonly Option<string?> _least = OptionValues.Text(
        "--least", "SIZE", "The least effect that counts (for same: the largest that does not), as in 10% or 500.");

    private readonly Option<string?> _threads =
        OptionValues.Text("--threads", "NUMBER", "Runs at once; as many as the computer has cores by default.");

    private readonly Option<string?> _data =
        OptionValues.Text("--data", "FILE", "Write every run into a file: .parquet or .csv.");

    private readonly Option<string?> _figure =
        OptionValues.Text("--figure", "FILE", "Draw it: .svg, .png or .pdf.");

    /// <summary>One object instead of text.</summary>
    public Option<bool> Json { get; } =
        OptionValues.Flag("--json", "One object for other programs (docs/json.md), and nothing else.");

    /// <summary>What is compared.</summary>
    public OptionGroup What => new("What is compared",
        [_vary, _measure, _seeds, _confidence, _claim, _least, _threads]);

    /// <summary>What comes out.</summary>
    public OptionGroup Out => new("What comes out", [_data, _figure, Json]);

    /// <summary>What was asked for.</summary>
    /// <exception cref="InputException">A value is wrong.</exception>
    public CompareRequest Read(ParseResult parsed)
    {
        string[] vary = parsed.GetValue(_vary) ?? [];
        if (vary.Length is 0 or > 2)
            throw new InputException(AppErrors.VaryOneOrTwo(vary.Length));
        string name = parsed.GetValue(_measure) ?? "makespan";
        NamedMeasure measure = MeasureNames.Find(name)
            ?? throw new InputException(AppErrors.UnknownWord("--measure", name, MeasureNames.All.Select(m => m.Name)));
        double confidence = parsed.GetValue(_confidence) is { } percent
            ? DecisionRule.ParseConfidence(percent)
            : DecisionRule.ConfidencePlain;
        string? data = parsed.GetValue(_data);
        if (data is not null)
            SweepFile.CheckName(data);
        string? figure = parsed.GetValue(_figure);
        if (figure is not null)
            FigureFile.CheckName(figure);
        return new(
            [.. vary], measure, (int?)parsed.WholeOf(_seeds, 1, Sweep.CellsMax), confidence, RuleOf(parsed, confidence),
            (int)(parsed.WholeOf(_threads, 1, 1024) ?? Environment.ProcessorCount), data, figure);
    }

    private DecisionRule? RuleOf(ParseResult parsed, double confidence)
    {
        string? least = parsed.GetValue(_least);
        if (parsed.GetValue(_claim) is not { } word)
        {
            return least is null
                ? null
                : throw new InputException(AppErrors.Needs("--least", "--claim"));
        }

        Direction direction = DecisionRule.ParseDirection(word);
        if (direction == Direction.Same && least is null)
            throw new InputException(AppErrors.Needs("--claim same", "--least"));
        return new(direction, least is null ? default : EffectSize.Parse(least), confidence);
    }
}
