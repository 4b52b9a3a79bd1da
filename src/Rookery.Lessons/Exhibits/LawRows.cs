using System.Collections.Immutable;
using System.Globalization;
using Rookery.Lessons.Blocks;
using Rookery.Traces.Measuring;

namespace Rookery.Lessons.Exhibits;

/// <summary>The laws beside a run's numbers, and of whom each is promised.</summary>
/// <remarks>
/// Sources: work law, span law and greedy bound: Graham 1966, Brent 1974, and Cormen, Leiserson, Rivest, Stein,
/// "Introduction to Algorithms", 3rd ed. 2009, section 27.1; steals and space: Blumofe and Leiserson, "Scheduling
/// multithreaded computations by work stealing", JACM 46(5), 1999.
/// </remarks>
internal static class LawRows
{
    /// <summary>Compares. Of a run that starved only the first law is looked at: it has not done its work.</summary>
    public static BlockTable TableOf(Measures run, bool isStarved)
    {
        Int128 cores = run.Cores;
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<string>>();
        void Add(string law, bool holds, Int128 left, string sign, Ratio right, string promised) => rows.Add(
        [
            law, $"{MeasureTable.TextOf(new(left, 1))} {sign} {MeasureTable.TextOf(right)}",
            holds ? "holds" : "does not hold", promised,
        ]);
        Add("Tp ≥ T1 / P", run.Makespan * cores >= run.Work, run.Makespan, "≥", new(run.Work, cores), "by every run");
        if (!isStarved)
        {
            Ratio greedy = run.GreedyBound;
            Add("Tp ≥ Tinf", run.Makespan >= run.Span, run.Makespan, "≥", new(run.Span, 1), "by every run");
            Add(
                "Tp ≤ (T1 − Tinf) / P + Tinf", run.Makespan * greedy.Denominator <= greedy.Numerator, run.Makespan,
                "≤", greedy, "by greedy runs where scheduling costs nothing");
            Add(
                "steals ≤ P · Tinf", run.Steals <= cores * run.Span, run.Steals, "≤", new(cores * run.Span, 1),
                "O(P · Tinf) on average, by stealing at random");
            Add(
                "space ≤ P · S1", run.LiveTasks <= cores * run.Deepest, run.LiveTasks, "≤",
                new(cores * run.Deepest, 1), "by runs in which the child runs first");
        }

        string processors = run.Cores.ToString(CultureInfo.InvariantCulture);
        return new($"The laws with this run's numbers (P = {processors})", ["law", "this run", "so it", "promised"],
            rows.ToImmutable(), []);
    }
}
