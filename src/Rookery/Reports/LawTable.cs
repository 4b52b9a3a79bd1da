using System.Collections.Immutable;
using Rookery.Traces;
using Rookery.Traces.Measuring;

namespace Rookery.Reports;

/// <summary>The laws beside a run's numbers, with a mark whether each holds and of whom it is promised.</summary>
/// <remarks>
/// Sources: work law, span law and greedy bound: Graham 1966, Brent 1974, and Cormen, Leiserson, Rivest, Stein,
/// "Introduction to Algorithms", 3rd ed. 2009, section 27.1; steals and space: Blumofe and Leiserson, "Scheduling
/// multithreaded computations by work stealing", JACM 46(5), 1999. A run that starved has not done the
/// work that the laws speak of, so only the first is looked at.
/// </remarks>
internal static class LawTable
{
    /// <summary>Compares.</summary>
    public static ReportTable Of(Measures run, TraceInputs inputs)
    {
        Int128 cores = run.Cores;
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<ReportCell>>();
        rows.Add(Row(
            "Tp ≥ T1/P", run.Makespan * cores >= run.Work, true, Numbers(run.Makespan, "≥", new(run.Work, cores)),
            "by every run"));
        if (!inputs.Starved)
        {
            Ratio greedy = run.GreedyBound;
            rows.Add(Row(
                "Tp ≥ Tinf", run.Makespan >= run.Span, true, Numbers(run.Makespan, "≥", new(run.Span, 1)),
                "by every run"));
            rows.Add(Row(
                "Tp ≤ (T1 − Tinf)/P + Tinf", run.Makespan * greedy.Denominator <= greedy.Numerator, false,
                Numbers(run.Makespan, "≤", greedy), "by greedy runs where scheduling costs nothing"));
            rows.Add(Row(
                "steals ≤ P · Tinf", run.Steals <= cores * run.Span, false,
                Numbers(run.Steals, "≤", new(cores * run.Span, 1)), "O(P · Tinf) on average, by stealing at random"));
            rows.Add(Row(
                "space ≤ P · S1", run.LiveTasks <= cores * run.Deepest, false,
                Numbers(run.LiveTasks, "≤", new(cores * run.Deepest, 1)), "by runs in which the child runs first"));
        }

        return new(["law", "this run", "", "promised"], rows.ToImmutable(), []);
    }

    private static ImmutableArray<ReportCell> Row(
        string law, bool holds, bool isPromised, string numbers, string promised)
    {
        // What nobody promised is no fault when it fails; the audit judges promises, with all that they depend on.
        Tone tone = holds ? Tone.Good : isPromised ? Tone.Bad : Tone.Quiet;
        return [law, numbers, new(holds ? "holds" : "does not hold", tone), ReportCell.Quiet(promised)];
    }

    private static string Numbers(Int128 left, string sign, Ratio right) =>
        $"{Say.Whole(left)} {sign} {Say.Time(right, "").TrimEnd()}";
}
