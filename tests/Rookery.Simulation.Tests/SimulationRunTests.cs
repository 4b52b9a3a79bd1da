using Rookery.Notation;
using Rookery.Testing;
using Rookery.Traces;

namespace Rookery.Simulation.Tests;

public sealed class SimulationRunTests
{
    private static readonly ProgramGenOptions Small = new(TasksMax: 150, ActionsMax: 1_500);

    [Fact]
    public void Recording_InAnyPortions_GivesTheBytesOfOneGo() =>
        Gen.Select(ProgramGen.BoundOf(Small), Gen.Int[1, 6], Gen.Int[0, 3], Gen.Int[1, 400]).Sample(
            (program, workers, scheduler, portion) =>
            {
                var settings = new RunSettings
                {
                    Workers = workers,
                    Scheduler = Scheduler.Named[scheduler].Scheduler,
                    Machine = Machine.Unit,
                };
                RunResult whole = Simulator.Record(program, settings);
                RunResult parts = InPortions(SimulationRun.Recording(program, settings), portion);
                Assert.True(Audit.Of(parts.Trace!).IsLawful);
                Assert.Equal(BytesOf(whole.Trace!), BytesOf(parts.Trace!));
                Assert.Equal(whole.Measures, parts.Measures);
                Assert.Equal(Traces.Measuring.Measures.Of(parts.Trace!), parts.Measures);
                Assert.Equal(whole.Starvation?.Time, parts.Starvation?.Time);
                Assert.Equal(parts.Starvation is not null, parts.Inputs.Starved);
                RunResult measured = InPortions(SimulationRun.Measuring(program, settings), portion);
                Assert.Equal(whole.Measures, measured.Measures);
                Assert.Null(measured.Trace);
            },
            iter: 200);

    [Fact]
    public void Advance_DoesAboutWhatItWasAskedFor()
    {
        SimulationRun run = SimulationRun.Recording(Fj.Bind(SimulatorTests.Fibonacci), new() { Workers = 2 });
        Assert.Equal(0, run.Events);
        run.Advance(100);
        Assert.InRange(run.Events, 100, 110);
        Assert.False(run.IsOver);
        run.Advance(1);
        Assert.InRange(run.Events, 101, 120);
    }

    [Fact]
    public void Finish_BeforeTheEnd_RunsToTheEndAndStaysTheSame()
    {
        SimulationRun run = SimulationRun.Recording(Fj.Bind(SimulatorTests.Fibonacci), new() { Workers = 2 });
        run.Advance(10);
        RunResult result = run.Finish();
        Assert.True(run.IsOver);
        Assert.Equal(353, result.Measures.Work);
        Assert.Equal(run.Events, result.Trace!.Count);
        Assert.Same(result, run.Finish());
        run.Advance(1);
        Assert.Equal(result.Trace.Count, run.Events);
    }

    [Fact]
    public void Advance_AfterAFault_GivesTheSameFault()
    {
        var settings = new RunSettings { Workers = 2, Limits = new() { EventsMax = 50 } };
        SimulationRun run = SimulationRun.Measuring(Fj.Bind(SimulatorTests.Fibonacci), settings);
        run.Advance(20);
        InputException first = Assert.Throws<InputException>(() => run.Advance(1_000));
        Assert.True(first.IsLimit);
        Assert.Same(first, Assert.Throws<InputException>(() => run.Advance(1)));
        Assert.Same(first, Assert.Throws<InputException>(run.Finish));
    }

    [Fact]
    public void Recording_WithBadSettings_IsRefusedAtOnce() =>
        Assert.Throws<InputException>(() =>
            SimulationRun.Recording(Fj.Bind(SimulatorTests.Fibonacci), new() { Workers = 0 }));

    [Fact]
    public void Advance_OfNothing_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            SimulationRun.Measuring(Fj.Bind(SimulatorTests.Fibonacci), new()).Advance(0));

    private static RunResult InPortions(SimulationRun run, int portion)
    {
        while (!run.IsOver)
            run.Advance(portion);
        return run.Finish();
    }

    private static byte[] BytesOf(Trace trace)
    {
        using var stream = new MemoryStream();
        TraceCsv.Write(trace, stream);
        return stream.ToArray();
    }
}
