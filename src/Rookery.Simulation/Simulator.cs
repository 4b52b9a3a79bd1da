using Rookery.Notation;
using Rookery.Programs;
using Rookery.Traces;

namespace Rookery.Simulation;

/// <summary>Runs programs on simulated workers. A run is a pure function of its inputs.</summary>
/// <remarks>In one go; <see cref="SimulationRun"/> is the same in portions.</remarks>
/// <example>
/// <code>
/// BoundProgram program = …;
/// RunResult result = Simulator.Record(program, new RunSettings { Workers = 2 });
/// long makespan = result.Measures.Makespan;
/// </code>
/// </example>
public static class Simulator
{
    /// <summary>Events between two calls of a progress callback: some hundredths of a second.</summary>
    private const long EventsBetweenReports = 262_144;

    /// <summary>Runs a program and keeps its measures only: memory grows with the live tasks.</summary>
    /// <param name="program">What to run, with parameters, data and seed.</param>
    /// <param name="settings">On what.</param>
    /// <param name="progress">Told the number of events now and then; may throw to stop the run.</param>
    /// <exception cref="InputException">The inputs are at fault, or a limit was reached.</exception>
    public static RunResult Measure(BoundProgram program, RunSettings settings, Action<long>? progress = null) =>
        Finish(SimulationRun.Measuring(program, settings), progress);

    /// <summary>Runs a program and keeps its trace as well: 24 bytes an event and about 24 a task.</summary>
    /// <inheritdoc cref="Measure"/>
    public static RunResult Record(BoundProgram program, RunSettings settings, Action<long>? progress = null) =>
        Finish(SimulationRun.Recording(program, settings), progress);

    /// <summary>What a trace of that run carries with it.</summary>
    public static TraceInputs InputsOf(BoundProgram program, RunSettings settings) => new()
    {
        Program = program.Name,
        Source = program.Source.Text,
        Maker = "simulation",
        Parameters = program.Parameters,
        Scheduler = settings.Scheduler.ToWords(settings.Workers),
        Machine = settings.Machine.ToCosts(),
        Workers = settings.Workers,
        Cores = settings.Cores,
        Seed = program.Seed,
        TimeUnit = settings.Machine.TimeUnit,
    };

    private static RunResult Finish(SimulationRun run, Action<long>? progress)
    {
        while (progress is not null && !run.IsOver)
        {
            run.Advance(EventsBetweenReports);
            progress(run.Events);
        }

        return run.Finish();
    }
}
