using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Rookery.Notation;
using Rookery.Simulation;
using Rookery.Traces.Measuring;

namespace Rookery.Experiments;

/// <summary>A program run on every combination of some choices, each with the same seeds.</summary>
/// <remarks>
/// Each cell is a pure function of the sweep and its number, so cells may be computed in any order, on any thread, on
/// any computer, and again after an interruption. Cells go seed by seed, so that what is there after a stop is whole
/// pairs. The same seeds serve all treatments: differences between treatments are taken seed by seed (paired), which
/// takes out what a seed does to all of them. Immutable, safe for many threads.
/// </remarks>
public sealed class Sweep
{
    /// <summary>The most cells that a sweep may have.</summary>
    public const int CellsMax = 1_000_000;

    // What identifies the meaning of results: raised when a change of the engine changes numbers.
    private const string Version = "1";

    private Sweep(Subject subject, Setup plain, ImmutableArray<Factor> factors, ImmutableArray<Treatment> treatments,
        long firstSeed, int seedCount)
    {
        (Subject, Plain, Factors, Treatments) = (subject, plain, factors, treatments);
        (FirstSeed, SeedCount) = (firstSeed, seedCount);
    }

    /// <summary>What is run.</summary>
    public Subject Subject { get; }

    /// <summary>The choices that do not vary.</summary>
    public Setup Plain { get; }

    /// <summary>What varies; empty when the treatments were given one by one.</summary>
    public ImmutableArray<Factor> Factors { get; }

    /// <summary>All combinations, the last factor varying fastest.</summary>
    public ImmutableArray<Treatment> Treatments { get; }

    /// <summary>The first seed; the others follow it.</summary>
    public long FirstSeed { get; }

    /// <summary>Seeds for each treatment.</summary>
    public int SeedCount { get; }

    /// <summary>Treatments times seeds.</summary>
    public int CellCount => Treatments.Length * SeedCount;

    /// <summary>All combinations of the factors' levels.</summary>
    /// <param name="subject">What is run.</param>
    /// <param name="plain">The choices that do not vary; its seed is the first seed.</param>
    /// <param name="factors">What varies, at least one.</param>
    /// <param name="seedCount">Seeds for each combination, at least 1.</param>
    /// <exception cref="InputException">
    /// There are too many cells, one factor twice, or a combination that makes no sense; the message names it.
    /// </exception>
    public static Sweep Of(Subject subject, Setup plain, ImmutableArray<Factor> factors, int seedCount)
    {
        if (factors.IsDefaultOrEmpty)
            throw new InputException(ExperimentErrors.NothingVaries());
        if (factors.GroupBy(f => f.Name).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new InputException(ExperimentErrors.FactorTwice(twice.First().ShortName));
        Int128 cells = factors.Aggregate((Int128)seedCount, (n, f) => n * f.Levels.Length);
        CheckSize(cells, seedCount);
        var treatments = ImmutableArray.CreateBuilder<Treatment>();
        foreach (ImmutableArray<string> levels in Combinations(factors))
        {
            Setup setup = plain.Without("seed");
            for (int i = 0; i < factors.Length; i++)
                setup = setup.With(factors[i].Name, levels[i]);
            string label = string.Join(", ", factors.Select((f, i) => $"{f.ShortName} {levels[i]}"));
            treatments.Add(Checked(new(treatments.Count, label, levels, setup)));
        }

        return new(subject, plain.Without("seed"), factors, treatments.ToImmutable(), plain.Seed, seedCount);
    }

    /// <summary>Treatments given one by one, as a claim compares two.</summary>
    /// <param name="subject">What is run.</param>
    /// <param name="treatments">What each is called, and its choices.</param>
    /// <param name="firstSeed">The first seed.</param>
    /// <param name="seedCount">Seeds for each, at least 1.</param>
    /// <exception cref="InputException">A treatment makes no sense, or there are too many cells.</exception>
    public static Sweep Of(
        Subject subject, ImmutableArray<(string Label, Setup Setup)> treatments, long firstSeed, int seedCount)
    {
        CheckSize((Int128)treatments.Length * seedCount, seedCount);
        return new(
            subject, Setup.Plain, [],
            [.. treatments.Select((t, i) => Checked(new Treatment(i, t.Label, [t.Label], t.Setup.Without("seed"))))],
            firstSeed, seedCount);
    }

    /// <summary>Which treatment and which seed a cell has.</summary>
    public (Treatment Treatment, long Seed) CellAt(int cell) =>
        (Treatments[cell % Treatments.Length], unchecked(FirstSeed + (cell / Treatments.Length)));

    /// <summary>Computes one cell.</summary>
    /// <param name="cell">From 0 to <see cref="CellCount"/> - 1.</param>
    /// <param name="progress">Told the run's events now and then; may throw to stop.</param>
    /// <exception cref="InputException">The run failed or reached a limit; the message names the cell's
    /// treatment.</exception>
    public CellResult Run(int cell, Action<long>? progress = null)
    {
        CheckCell(cell);
        (Treatment treatment, long seed) = CellAt(cell);
        return Guarded(cell, () => ResultOf(cell, Subject.Measure(treatment.Setup, seed, progress)));
    }

    /// <summary>Begins to compute one cell, in portions.</summary>
    /// <param name="cell">From 0 to <see cref="CellCount"/> - 1.</param>
    /// <exception cref="InputException">The choices or the program are at fault; the message names the cell's
    /// treatment.</exception>
    public CellRun Begin(int cell)
    {
        CheckCell(cell);
        return new(this, cell);
    }

    internal static CellResult ResultOf(int cell, RunResult run)
    {
        bool isStarved = run.Starvation is not null;
        return new(cell, isStarved, [.. MeasureNames.All.Select(m => m.ValueOf(run.Measures, isStarved))]);
    }

    /// <summary>Does something for a cell; what goes wrong then names the cell.</summary>
    internal T Guarded<T>(int cell, Func<T> work)
    {
        try
        {
            return work();
        }
        catch (InputException wrong)
        {
            (Treatment treatment, long seed) = CellAt(cell);
            throw new InputException(ExperimentErrors.CellFailed(treatment.Label, seed, wrong.Diagnostics[0]));
        }
    }

    /// <summary>
    /// A name for all that the results depend on: equal names have equal results. 64 hexadecimal digits.
    /// </summary>
    public string Identity()
    {
        var text = new StringBuilder();
        void Add(string part) => text.Append(part.Length).Append(':').Append(part).Append('\n');
        Add(Version);
        Add(Subject.Program.Source.Text);
        foreach (string file in Subject.Program.Data.Select(d => d.File).Distinct())
        {
            using TextReader? reader = Subject.Data.Open(file);
            Add(reader?.ReadToEnd() ?? "");
        }

        Add(Subject.Evaluation.ToString());
        Add(Subject.Run.ToString());
        foreach (Treatment treatment in Treatments)
            Add(treatment.Setup.ToString());
        Add(string.Create(CultureInfo.InvariantCulture, $"{FirstSeed} {SeedCount}"));
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())));
    }

    private void CheckCell(int cell)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(cell);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(cell, CellCount);
    }

    private static void CheckSize(Int128 cells, int seedCount)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(seedCount, 1);
        if (cells > CellsMax)
            throw new InputException(ExperimentErrors.TooManyCells(cells, CellsMax));
    }

    private static Treatment Checked(Treatment treatment)
    {
        try
        {
            _ = treatment.Setup.ToSettings();
            return treatment;
        }
        catch (InputException wrong)
        {
            throw new InputException(ExperimentErrors.Senseless(treatment.Label, wrong.Diagnostics[0]));
        }
    }

    private static IEnumerable<ImmutableArray<string>> Combinations(ImmutableArray<Factor> factors) =>
        factors.Aggregate(
            Enumerable.Repeat(ImmutableArray<string>.Empty, 1),
            (sofar, factor) => sofar.SelectMany(levels => factor.Levels.Select(levels.Add)));
}
