using Rookery.Programs;
using Rookery.Simulation;
using Rookery.Testing;
using Rookery.Traces;
using Rookery.Traces.Measuring;

namespace Rookery.Reference.Tests;

/// <summary>Audited runs: no number in these tests comes from a trace that the audit has not found lawful.</summary>
internal static class Runs
{
    public static RunSettings Settings(int workers, string scheduler = "work-stealing") => new()
    {
        Workers = workers,
        Scheduler = Scheduler.Named.First(s => s.Name == scheduler).Scheduler,
    };

    public static Measures Of(BoundProgram program, RunSettings settings) => Record(program, settings).Measures;

    public static RunResult Record(BoundProgram program, RunSettings settings)
    {
        RunResult result = Simulator.Record(program, settings);
        AuditReport report = Audit.Of(result.Trace!);
        Assert.True(
            report.IsLawful,
            $"{settings.Scheduler} on {settings.Workers} workers, seed {program.Seed}: "
            + string.Join("; ", report.Findings.Take(3)) + Environment.NewLine + program.Source.Text);
        return result;
    }

    public static Measures Of(string text, RunSettings settings, long seed = 1) => Of(Fj.Bind(text, seed), settings);
}
