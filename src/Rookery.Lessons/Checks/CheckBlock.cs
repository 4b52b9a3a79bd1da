using System.Collections.Immutable;
using System.Globalization;
using Rookery.Checking;
using Rookery.Lessons.Blocks;
using Rookery.Notation;

namespace Rookery.Lessons.Checks;

/// <summary>Every execution of some scenarios under some memory models, and what the page shows of it.</summary>
internal sealed class CheckBlock : LessonBlock
{
    private readonly CheckSpec _spec;
    private readonly BlockAlgorithms _algorithms;

    /// <summary>Takes what was read.</summary>
    public CheckBlock(BlockPlace place, CheckSpec spec)
        : base(place) => (_spec, _algorithms) = (spec, new(place, spec));

    /// <inheritdoc/>
    public override string Word => "check";

    /// <inheritdoc/>
    public override string KeyOf(ILessonFiles files) => _spec.ToKey() + _algorithms.KeyOf(files);

    /// <inheritdoc/>
    public override BlockOutcome Compute(ILessonFiles files, Action<long>? progress)
    {
        (ImmutableArray<(Algorithm Algorithm, string Scenario)> cases, ImmutableArray<Problem> problems) =
            _algorithms.Read(files);
        if (!problems.IsEmpty)
            return new(null, problems);
        var answers = ImmutableArray.CreateBuilder<CheckAnswer>();
        long states = 0;
        foreach ((Algorithm algorithm, string scenario) in cases)
        {
            foreach (MemoryModel model in _spec.Models)
            {
                try
                {
                    CheckResult result = Checker.Check(algorithm, scenario, Options(model, states, progress));
                    states += result.States;
                    answers.Add(new(algorithm, result));
                }
                catch (InputException wrong)
                {
                    return new(null, [.. wrong.Diagnostics.Select(one => new Problem(algorithm.Source, one))]);
                }
            }
        }

        return Show(new([.. answers], _spec));
    }

    // All searches of a block share its states; each has at least one, so that it says that there are too many.
    private CheckOptions Options(MemoryModel model, long states, Action<long>? progress) => new()
    {
        Memory = model,
        BufferMax = _spec.BufferMax,
        Reductions = _spec.Reduces ? Reductions.All : Reductions.None,
        ClassifiesProgress = _spec.NeedsProgress,
        StatesMax = Math.Max(1, _spec.StatesMax - states),
        BytesMax = LessonLimits.StateBytesMax,
        Progress = now =>
        {
            progress?.Invoke(states + now.States);
            return true;
        },
    };

    private BlockOutcome Show(CheckAnswers answers)
    {
        if (answers.OutOfBudget is { } stopped && !_spec.ExpectsOutOfBudget)
        {
            return BlockOutcome.Bad(new Problem(Place.Lesson, LessonErrors.OutOfBudget(
                Place.Span, answers.StoppedAt(stopped), CheckAnswers.Shrink)));
        }

        CheckAnswer? shown = _spec.Show.Contains(CheckView.Witness)
            ? answers.All.FirstOrDefault(one => one.Result.Witness is not null) : null;
        var drawing = shown is null ? null : new WitnessDrawing(shown);
        return BlockOutcome.Good(new BlockResult
        {
            Measures = [.. answers.Measures()],
            Figures = drawing is null ? [] : [drawing.Figure()],
            Tables = [.. CheckTables.Of(answers, _spec)],
            Player = drawing is not null && _spec.HasPlayer ? drawing.Player() : null,
            MadeFrom = MadeFrom(answers),
            Listing = _spec.Show.Contains(CheckView.Algorithm)
                ? (shown ?? answers.All[0]).Algorithm.Source.Text : "",
            Answer = answers.Answer,
            Verdict = answers.Sentence(shown),
        });
    }

    private string MadeFrom(CheckAnswers answers)
    {
        string files = _spec.Text is null ? string.Join(", ", _spec.Files.Select(one => one.Text)) : "the text above";
        string scenario = _spec.Scenario is { } asked ? $", \"{asked.Text}\"" : "";
        string models = string.Join(", ", _spec.Models.Select(CheckWords.WordOf));
        string buffer = _spec.BufferMax == 0 ? "" : string.Create(
            CultureInfo.InvariantCulture, $"; at most {_spec.BufferMax} waiting writes");
        return $"{files}{scenario}; every execution under {models}; "
            + string.Create(CultureInfo.InvariantCulture, $"{answers.All.Sum(one => one.Result.States):N0} states")
            + buffer + (_spec.Reduces ? "" : "; without reductions");
    }
}
