using System.Collections.Immutable;
using Rookery.Drawing;
using Rookery.Programs;
using Rookery.Simulation;
using Rookery.Traces.Measuring;

namespace Rookery.Lessons.Exhibits;

/// <summary>Runs a program on 1, 2, 4, … workers for its speed-up curve.</summary>
public static class SpeedUpCurve
{
    /// <summary>The curve goes at least so far.</summary>
    private const int WorkersLeast = 16;

    /// <summary>Runs it with each number of workers.</summary>
    /// <param name="program">The program.</param>
    /// <param name="settings">Everything but the number of workers.</param>
    /// <param name="name">What the legend calls the scheduler.</param>
    /// <param name="progress">Told of each run's events; may throw to stop.</param>
    /// <exception cref="Notation.InputException">A run reaches a limit.</exception>
    public static SpeedUpData Of(BoundProgram program, RunSettings settings, string name, Action<long>? progress)
    {
        ImmutableArray<int> counts = CountsFor(settings.Workers);
        var runs = ImmutableArray.CreateBuilder<SpeedUpRun>(counts.Length);
        Measures? measures = null;
        foreach (int workers in counts)
        {
            RunResult run = Simulator.Measure(program, settings with { Workers = workers }, progress);

            // A run that starved has no makespan, so it is no point of the curve.
            if (run.Starvation is not null)
                continue;
            measures = run.Measures;
            runs.Add(new(workers, measures.Makespan));
        }

        return new SpeedUpData
        {
            Program = program.Name,
            WorkTicks = measures?.Work ?? 0,
            SpanTicks = measures?.Span ?? 0,
            Series = [new(name, runs.ToImmutable())],
        };
    }

    /// <summary>1, 2, 4, … to twice the asked number and at least 16, the asked number among them.</summary>
    /// <param name="workers">The asked number, at least 1.</param>
    public static ImmutableArray<int> CountsFor(int workers)
    {
        var counts = new SortedSet<int> { workers };
        long last = Math.Max(WorkersLeast, 2L * workers);
        for (long count = 1; count <= last && count <= RunSettings.WorkersMax; count *= 2)
            counts.Add((int)count);
        return [.. counts];
    }
}
