using System.Collections.Immutable;
using System.Globalization;
using Rookery.Drawing;
using Rookery.Experiments;
using Rookery.Experiments.Claims;
using Rookery.Experiments.Statistics;
using Rookery.Experiments.Words;
using Rookery.Lessons.Blocks;
using Rookery.Lessons.Exhibits;
using Rookery.Notation;
using Rookery.Programs;

namespace Rookery.Lessons.Claims;

/// <summary>An experiment on two treatments, paired by seed, and its verdict.</summary>
internal sealed class ClaimBlock : LessonBlock
{
    private readonly ClaimSpec _spec;
    private readonly BlockProgram _program;

    /// <summary>Takes what was read.</summary>
    public ClaimBlock(BlockPlace place, ClaimSpec spec)
        : base(place) => (_spec, _program) = (spec, new(place, spec.Program));

    /// <inheritdoc/>
    public override string Word => "claim";

    /// <inheritdoc/>
    public override string KeyOf(ILessonFiles files) => _spec.ToKey() + _program.KeyOf(files);

    /// <inheritdoc/>
    public override BlockOutcome Compute(ILessonFiles files, Action<long>? progress)
    {
        (FjProgram? read, ImmutableArray<Problem> problems) = _program.Read(files);
        if (read is null)
            return new(null, problems);
        Subject subject = new Subject(
            read, new BesideProgram(_spec.Program.Text, files), LessonLimits.Evaluation, LessonLimits.Run)
            .WithDataInMemory();
        var claim = new Claim(
            _spec.Says, subject, _spec.First, _spec.Second, _spec.Measure, _spec.Rule, _spec.FirstSeed, _spec.Seeds);
        try
        {
            Sweep sweep = claim.ToSweep();
            long events = 0;
            ClaimResult result = claim.Decide(
                Enumerable.Range(0, sweep.CellCount).Select(cell => sweep.Run(cell,
                e => progress?.Invoke(events += e))));
            return Show(result);
        }
        catch (InputException wrong)
        {
            return new(null, _program.ProblemsOf(read.Source, wrong.Diagnostics));
        }
    }

    private BlockOutcome Show(ClaimResult result)
    {
        string verdict = WordOf(result.Verdict), reason = ClaimWords.English.Reason(result);
        if (_spec.Expected is { } expected && expected.Verdict != result.Verdict)
        {
            return BlockOutcome.Bad(new Problem(
                Place.Lesson,
                LessonErrors.OtherVerdict(expected.Text.Span, expected.Text.Text, verdict, reason),
                IsMiss: true));
        }

        string rule = ClaimWords.English.Rule(result.Claim);
        string source = _spec.Source.Length == 0 ? "" : $" Claimed by: {_spec.Source}.";
        return BlockOutcome.Good(new BlockResult
        {
            Measures = [.. MeasuresOf(result)],
            Figures = result.First is null ? [] : [FigureOf(result)],
            Answer = $"{Capitalised(verdict)}.",
            Verdict = $"{reason} The rule, fixed beforehand: {rule}.{source}",
            MadeFrom = string.Create(
                CultureInfo.InvariantCulture,
                $"{_spec.Program.Text}; {_spec.Seeds} seeds from {_spec.FirstSeed}; {_spec.First.Setup} against ")
                + _spec.Second.Setup,
        });
    }

    private BlockFigure FigureOf(ClaimResult result)
    {
        string unit = _spec.First.Setup.ToSettings().Machine.TimeUnit;
        var data = new ComparisonData
        {
            Title = _spec.Says,
            Subtitle = string.Create(
                CultureInfo.InvariantCulture,
                $"{_spec.Seeds} seeds, every run a point; bars: mean and its "
                + $"{_spec.Rule.Confidence * 100:0.#} % interval"),
            Measure = _spec.Measure.IsTime ? $"{_spec.Measure.Name} ({unit})" : _spec.Measure.Name,
            Columns = [_spec.First.Label, _spec.Second.Label],
            Series = [""],
            Groups = [GroupOf(result.First!, 0), GroupOf(result.Second!, 1)],
            ArePaired = true,
            Finding = $"{Capitalised(WordOf(result.Verdict))}. {ClaimWords.English.Reason(result)}",
        };
        Scene Draw(Frame frame) => ComparisonView.Draw(
            frame == FigureSizes.Slide ? data : data with { Finding = "" }, new() { Frame = frame });
        Scene slide = Draw(FigureSizes.Slide);
        return new()
        {
            Id = "runs",
            Title = slide.Title,
            Description = slide.Description,
            Narration = data.Finding,
            Slide = SvgWriter.Write(slide),
            Wide = SvgWriter.Write(Draw(FigureSizes.WideWhole), FigureDrawer.Inline),
            Narrow = SvgWriter.Write(Draw(FigureSizes.NarrowWhole), FigureDrawer.Inline),
        };
    }

    private ComparisonGroup GroupOf(Sample sample, int column)
    {
        var interval = Interval.OfMean(sample, _spec.Rule.Confidence);
        return new(column, 0, sample.Values, sample.Mean, interval.Low, interval.High);
    }

    private static IEnumerable<MeasureValue> MeasuresOf(ClaimResult result)
    {
        yield return Number("first.mean", result.First?.Mean);
        yield return Number("second.mean", result.Second?.Mean);
        yield return Number("difference", result.Difference?.Mean);
        yield return Number("difference.low", result.DifferenceInterval?.Low);
        yield return Number("difference.high", result.DifferenceInterval?.High);
        yield return Number("share", result.Share);
        yield return Number("share.low", result.ShareInterval?.Low);
        yield return Number("share.high", result.ShareInterval?.High);
        foreach (Verdict verdict in Enum.GetValues<Verdict>())
            yield return Number(WordOf(verdict), result.Verdict == verdict ? 1 : 0);
    }

    // Formulas are exact, and a mean is not: it counts with six decimals.
    private static MeasureValue Number(string name, double? value)
    {
        const int scale = 1_000_000;
        return value is not { } number
            ? new(name, "0", "0")
            : new(
                name, Math.Round(number * scale).ToString("F0", CultureInfo.InvariantCulture),
                scale.ToString(CultureInfo.InvariantCulture));
    }

    private static string WordOf(Verdict verdict) => verdict switch
    {
        Verdict.Supported => "supported",
        Verdict.Refuted => "refuted",
        Verdict.Undecided => "undecided",
    };

    private static string Capitalised(string word) => char.ToUpperInvariant(word[0]) + word[1..];
}
