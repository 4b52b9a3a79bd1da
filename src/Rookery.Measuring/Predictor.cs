using Rookery.Pool;
using Rookery.Programs;
using Rookery.Simulation;

namespace Rookery.Measuring;

/// <summary>Puts simulated runs on a calibrated machine beside measured ones.</summary>
public static class Predictor
{
    /// <summary>Simulates and measures a program with one number of workers.</summary>
    /// <param name="program">The program.</param>
    /// <param name="machine">The calibrated machine.</param>
    /// <param name="settings">How it is measured; a unit is a whole number of nanoseconds.</param>
    /// <param name="stop">Ends it.</param>
    public static Prediction Of(
        BoundProgram program, Machine machine, MeasureSettings settings, CancellationToken stop = default)
    {
        PoolOptions pool = settings.Pool;
        int cores = Math.Min(Environment.ProcessorCount, pool.Workers);
        RunResult simulated = Simulator.Measure(
            program, new RunSettings
            {
                Workers = pool.Workers,
                Machine = machine with { Cores = cores },
                UnitLength = (long)settings.UnitNanoseconds,
                Scheduler = SchedulerOf(pool),
            },
            _ => stop.ThrowIfCancellationRequested());
        return new(
            pool.Workers, simulated.Measures.Makespan, Measurer.HandOver(settings, stop),
            Measurer.Measure(program, settings, null, stop), pool.Workers <= Environment.ProcessorCount);
    }

    // The simulator has no pauses between looks, so what the pool does in its patience is told as looks at their price.
    private static Scheduler SchedulerOf(PoolOptions pool)
    {
        var scheduler = new Scheduler();
        foreach ((string name, string word) in OptionText.Of(pool))
        {
            if (pool.Queues == Rookery.Pool.Queues.PerWorker
                || name is "queues" or "at-join" or "when-idle" or "patience" or "wake")
                scheduler = scheduler.With(name, word);
        }

        return scheduler;
    }
}
