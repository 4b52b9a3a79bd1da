using Rookery.Testing;
using Rookery.Traces;

namespace Rookery.Simulation.Tests.Regressions;

/// <summary>
/// Under fork-runs child the worker that forks holds the child before the child begins. A leapfrogging thief that
/// looks at it in between was accused of stealing from a stranger.
/// </summary>
public sealed class AwaitedChildInHand
{
    private const string Halves = """
        task half(lo, hi)
            if hi - lo <= 8
                work 0
                work 3
                work 5
            else
                let mid = (lo + hi) / 2
                fork half(lo, mid)
                fork half(mid, hi)
                work (hi - lo) % 11
        start half(30, 57)
        """;

    [Fact]
    public void Record_ThiefLooksBetweenForkAndBegin_IsLawful()
    {
        var settings = new RunSettings
        {
            Workers = 7,
            Scheduler = new()
            {
                ThiefTakes = ThiefTakes.Newest,
                ForkRuns = ForkRuns.Child,
                AtJoin = AtJoin.Leapfrog,
                WhenIdle = WhenIdle.BackOff,
            },
            Machine = Machine.Ideal with { Fork = 19, Take = 6, Probe = 22, Steal = 2, LostRace = 17 },
        };

        AuditReport report = Audit.Of(Simulator.Record(Fj.Bind(Halves), settings).Trace!);

        Assert.True(report.IsLawful, string.Join("; ", report.Findings.Take(3)));
    }
}
