using System.Collections.Immutable;
using System.Globalization;
using Rookery.Experiments;
using Rookery.Experiments.Claims;
using Rookery.Experiments.Words;
using Rookery.Lab.Runs;
using Rookery.Lab.Session;
using Rookery.Lab.Texts;
using Rookery.Notation;
using Rookery.Programs;
using Rookery.Simulation;
using Rookery.Traces.Measuring;

namespace Rookery.Lab.Studies;

/// <summary>A study that makes sense: which runs are made, and what is asked of them.</summary>
/// <param name="Kind">What is asked.</param>
/// <param name="Inputs">Program and choices that the runs share.</param>
/// <param name="Sweep">The runs.</param>
/// <param name="Measure">What is measured.</param>
/// <param name="Claim">The claim; null for other kinds.</param>
internal sealed record StudyPlan(
    StudyKind Kind, Inputs Inputs, Sweep Sweep, NamedMeasure Measure, Claim? Claim)
{
    /// <summary>Of every interval of a mean.</summary>
    public const double Confidence = DecisionRule.ConfidencePlain;

    /// <summary>The same, as it is said.</summary>
    public const string ConfidencePercent = "95 %";

    /// <summary>The most runs of one study in the page.</summary>
    public const int CellsMax = 20_000;

    /// <summary>The most combinations of one study in the page: more columns and rows nobody reads there.</summary>
    public const int TreatmentsMax = 64;

    private const int SeedsMax = 1_000;

    /// <summary>The unit of time of its runs.</summary>
    public string Unit => Sweep.Treatments[0].Setup.ToSettings().Machine.TimeUnit;

    /// <summary>What is measured, with its unit where it is a time.</summary>
    public string Measured(LabTexts texts) =>
        Measure.IsTime ? $"{Measure.Name} ({texts.Unit(Unit)})" : Measure.Name;

    /// <summary>Makes a plan of what is filled in.</summary>
    /// <exception cref="InputException">It makes no sense; the message says why.</exception>
    public static StudyPlan Of(StudyForm form, Inputs inputs)
    {
        FjProgram program = ProgramReader.Read(inputs.Program.Name, inputs.Program.Text).OrThrow();
        var subject = new Subject(
            program, new TextDataSource(inputs.Program.Data), EvaluationLimits.Default, RunMaker.Limits);
        Setup setup = Known(inputs.Setup, subject.Parameters);
        int seeds = SeedsOf(form);
        NamedMeasure measure = MeasureNames.Find(form.Kind == StudyKind.Curve ? "makespan" : form.Measure)
            ?? throw new InputException(StudyErrors.NoMeasure(form.Measure));
        Claim? claim = form.Kind == StudyKind.Claim ? ClaimOf(form, subject, setup, measure, seeds) : null;
        Sweep sweep = claim?.ToSweep() ?? Sweep.Of(subject, setup, FactorsOf(form, subject, setup), seeds);
        if (sweep.Treatments.Length > TreatmentsMax)
            throw new InputException(StudyErrors.TooManyTreatments(sweep.Treatments.Length, TreatmentsMax));
        return sweep.CellCount > CellsMax
            ? throw new InputException(StudyErrors.TooManyRuns(sweep.CellCount, CellsMax))
            : new(form.Kind, inputs, sweep, measure, claim);
    }

    /// <summary>Program and choices of one run.</summary>
    public Inputs InputsOf(int cell)
    {
        (Treatment treatment, long seed) = Sweep.CellAt(cell);
        return Inputs with
        {
            Setup = treatment.Setup.With("seed", seed.ToString(CultureInfo.InvariantCulture)),
        };
    }

    private static int SeedsOf(StudyForm form)
    {
        int least = form.Kind == StudyKind.Claim ? 2 : 1;
        return int.TryParse(form.Seeds, NumberStyles.None, CultureInfo.InvariantCulture, out int seeds)
            && seeds >= least && seeds <= SeedsMax
            ? seeds
            : throw new InputException(StudyErrors.NoSeeds(form.Seeds, least, SeedsMax));
    }

    private static ImmutableArray<Factor> FactorsOf(StudyForm form, Subject subject, Setup setup)
    {
        if (form.Kind == StudyKind.Sweep)
            return [Factor.Of(form.Choice, form.Levels.Split(','), subject.Parameters)];
        Factor workers = Factor.Of("workers", form.Workers.Split(','), subject.Parameters);
        string own = setup.Choices.GetValueOrDefault("scheduler", Scheduler.Named[0].Name);
        return form.Beside.Length == 0 || form.Beside == own
            ? [workers]
            : [Factor.Of("scheduler", [own, form.Beside], subject.Parameters), workers];
    }

    private static Claim ClaimOf(StudyForm form, Subject subject, Setup setup, NamedMeasure measure, int seeds)
    {
        string name = Factor.Of(form.ClaimChoice, [form.First], subject.Parameters).Name;
        _ = Factor.Of(form.ClaimChoice, [form.First, form.Second], subject.Parameters);
        (string Label, Setup Setup) Side(string level) =>
            ($"{StudyChoices.ShortName(name)} {level.Trim()}", setup.With(name, level.Trim()));
        var direction = DecisionRule.ParseDirection(form.Direction);
        var least = EffectSize.Parse(form.Least);
        if (direction == Direction.Same && least.Amount <= 0)
            throw new InputException(StudyErrors.SameNeedsASize());
        var rule = new DecisionRule(direction, least, Confidence);
        var (first, second) = (Side(form.First), Side(form.Second));
        string says = ClaimWords.English.Rule(rule, first.Label, second.Label, measure.Name, seeds);
        return new(says, subject, first, second, measure, rule, setup.Seed, seeds);
    }

    // Parameters of another program that was open before stay chosen in the session.
    private static Setup Known(Setup setup, ImmutableArray<string> parameters) => setup.Parameters.Keys
        .Where(name => !parameters.Contains(name)).Aggregate(setup, (s, name) => s.Without("set." + name));
}
