using Rookery.Testing;
using Rookery.Traces;

namespace Rookery.Simulation.Tests;

/// <summary>
/// Any program under any options on any machine: lawful by the audit, and measured the same without a trace.
/// </summary>
public sealed class SchedulerProperties
{
    private static readonly ProgramGenOptions Small = new(TasksMax: 150, ActionsMax: 1_500);

    private static readonly Gen<Scheduler> Schedulers = Gen.Int[0, 999_999_999].Select(draw =>
    {
        var scheduler = new Scheduler();
        foreach (string option in Scheduler.OptionNames.Where(o => o != "patience"))
        {
            // Defaults half of the time, so that most combinations are possible ones.
            var words = Scheduler.WordsOf(option);
            int choice = draw % (2 * words.Length);
            draw /= 2;
            scheduler = scheduler.With(option, words[Math.Max(0, choice - words.Length)]);
        }

        return draw % 3 == 0 ? scheduler with { Patience = 1 + (draw % 7) } : scheduler;
    });

    private static readonly Gen<Machine> Machines = Gen.Select(Gen.Long[0, 30].Array[11], Gen.Int[0, 3]).Select(
        (costs, preset) => preset < 3
            ? Machine.Presets[preset]
            : Machine.CostNames.Take(11).Zip(costs).Aggregate(
                Machine.Ideal, (m, c) => m.With(c.First, c.First is "probe" or "slice" ? c.Second + 1 : c.Second)));

    [Fact]
    public void Record_AnyOptionsAndCosts_IsLawfulAndMeasuredAlike() =>
        Gen.Select(ProgramGen.BoundOf(Small), Schedulers, Machines, Gen.Int[1, 8], Gen.Int[0, 8]).Sample(
            (program, scheduler, machine, workers, cores) =>
            {
                if (scheduler.Refusal() is not null)
                    return;
                bool isShared = cores > 0 && cores < workers;
                var settings = new RunSettings
                {
                    Workers = workers,
                    Scheduler = scheduler,
                    Machine = isShared
                        ? machine with { Cores = cores, Slice = Math.Min(machine.Slice, 2_000) }
                        : machine,
                    Limits = new() { EventsMax = 2_000_000 },
                };
                RunResult recorded = Simulator.Record(program, settings);
                AuditReport report = Audit.Of(recorded.Trace!);
                Assert.True(
                    report.IsLawful,
                    $"{scheduler} {settings.Machine} {workers} workers: {string.Join("; ", report.Findings.Take(3))}");
                Assert.Equal(recorded.Measures, Simulator.Measure(program, settings).Measures);
                Assert.Equal(report.Span, recorded.Measures.Span);
                if (recorded.Starvation is null)
                    Assert.Equal(SerialRun.Of(program).Work, recorded.Measures.Work);
            },
            iter: 10_000);
}
