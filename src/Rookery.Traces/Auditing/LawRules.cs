using System.Collections.Immutable;

namespace Rookery.Traces.Auditing;

/// <summary>The laws about whole runs: no schedule can break the first two, no greedy one the third.</summary>
/// <remarks>
/// Sources: the work and span laws and the greedy bound are in T. H. Cormen, C. E. Leiserson, R. L. Rivest, C. Stein,
/// "Introduction to Algorithms", chapter on multithreaded (task-parallel) algorithms; the bound is R. P. Brent's (1974)
/// and R. L. Graham's (1966). In the bound a worker that a task holds while it waits for something outside counts as
/// busy, so blocking adds to the work there.
/// </remarks>
internal sealed class LawRules(AuditState state)
{
    /// <summary>The laws with this run's numbers: AU070, AU071, AU072.</summary>
    /// <param name="work">Work.</param>
    /// <param name="blocked">Time in which tasks were blocked.</param>
    /// <param name="span">Span.</param>
    /// <param name="makespan">Makespan.</param>
    /// <param name="isEmpty">Whether the trace has no events.</param>
    public ImmutableArray<AuditLaw> Check(Int128 work, Int128 blocked, long span, long makespan, bool isEmpty)
    {
        int workersSeen = state.Workers.Count(w => w.LastStep >= 0);
        int processors = Math.Max(1, Math.Min(state.Options.Cores, workersSeen));
        Int128 slack = state.Options.Uncertainty;
        string greedyWhy = WhyNotGreedy(processors, isEmpty);
        ImmutableArray<AuditLaw> laws =
        [
            Law(AuditRules.WorkLaw, "T1 ≤ P · Tp", work, processors * (makespan + slack), ""),
            Law(AuditRules.SpanLaw, "Tinf ≤ Tp", span, makespan + slack, ""),
            Law(
                AuditRules.GreedyBound, "P · Tp ≤ T1 + (P - 1) · Tinf", (Int128)processors * makespan,
                work + blocked + ((Int128)(processors - 1) * span), greedyWhy),
        ];
        foreach (AuditLaw law in laws)
        {
            if (law.Verdict == LawVerdict.Broken)
            {
                state.Findings.Add(
                    law.Rule, -1, -1, -1,
                        $"{law.Formula} is broken: {law.Left} is more than {law.Right}, with P = {processors}.");
            }
        }

        return laws;
    }

    private static AuditLaw Law(AuditRule rule, string formula, Int128 left, Int128 right, string why) => new(
        rule, formula, left, right,
        why.Length > 0 ? LawVerdict.NotApplicable : left <= right ? LawVerdict.Holds : LawVerdict.Broken, why);

    private string WhyNotGreedy(int processors, bool isEmpty)
    {
        AuditOptions options = state.Options;
        if (isEmpty || options.Starved)
            return "The run has not finished.";
        if (!options.HasSharedQueue || !options.Suspends || !options.IdleSpins)
            return "The bound is for greedy runs: one shared queue, suspended joins, idle workers that watch.";
        if (!options.IsFreeMachine)
            return "The bound is for a machine on which scheduling costs nothing.";
        if (options.Cores < options.Workers)
            return "The bound is for a core for each worker: a worker that only watches may hold another's core.";
        return processors < options.Workers ? "Some workers have no event." : "";
    }
}
