using System.Collections.Immutable;
using System.Diagnostics;
using Rookery.Measuring.Plans;
using Rookery.Measuring.Tasks;
using Rookery.Notation;
using Rookery.Pool;
using Rookery.Pool.Recording;
using Rookery.Programs;

namespace Rookery.Measuring;

/// <summary>Runs programs on real workers and takes the time.</summary>
public static class Measurer
{
    private const int NotesMax = 1 << 22;

    /// <summary>Measures a program.</summary>
    /// <param name="program">The program.</param>
    /// <param name="settings">How.</param>
    /// <param name="report">Told how many runs are done; may stop all by an exception.</param>
    /// <param name="stop">Ends the measuring.</param>
    /// <exception cref="InputException">The program or the settings are wrong, a limit is reached, or it
    /// starved.</exception>
    public static Measurement Measure(
        BoundProgram program, MeasureSettings settings, Action<long>? report = null, CancellationToken stop = default)
    {
        Plan plan = Plan.Of(program, settings.TasksMax, stop);
        double nanoseconds = (double)(plan.Work + plan.Blocked) * settings.UnitNanoseconds;
        int runs = settings.Repeats + settings.WarmUps + (settings.IsRecorded ? settings.WarmUps + 1 : 0);
        if (nanoseconds * runs / 1e9 > settings.SecondsMax)
            throw new InputException(MeasuringErrors.TooLong(nanoseconds * runs / 1e9, settings.SecondsMax));
        try
        {
            (PlanRun run, double step, ImmutableArray<long> times) = TimesOf(plan, settings, report, stop);
            return new()
            {
                Times = times,
                Workers = settings.IsOnTasks ? Environment.ProcessorCount : settings.Pool.Workers,
                Tasks = plan.Count,
                Work = (long)((double)plan.Work * settings.UnitNanoseconds),
                UnitNanoseconds = settings.UnitNanoseconds,
                StepNanoseconds = step,
                Trace = settings.IsRecorded ? Record(program, run, settings, stop) : null,
            };
        }
        catch (PoolStarvedException)
        {
            throw new InputException(MeasuringErrors.Starved(program.Name));
        }
        catch (RecordingException reason)
        {
            throw new InputException(MeasuringErrors.NotRecorded(reason.Message));
        }
        catch (ArgumentException reason)
        {
            throw new InputException(MeasuringErrors.Refused(reason.Message));
        }
    }

    /// <summary>
    /// How long the pool takes to have a worker begin a program and to come back when it has ended: the shortest of as
    /// many runs as <paramref name="settings"/> ask for, in nanoseconds.
    /// </summary>
    /// <param name="settings">The pool, and how often.</param>
    /// <param name="stop">Ends the measuring.</param>
    public static long HandOver(MeasureSettings settings, CancellationToken stop = default)
    {
        using var pool = new WorkerPool(settings.Pool with { RecordingCapacity = 0 });
        long shortest = long.MaxValue;
        void Once()
        {
            long start = Stopwatch.GetTimestamp();
            long inside = pool.Run<BusyTask, long>(default, cancellation: stop);
            TimeSpan besides = Stopwatch.GetElapsedTime(start + inside);
            shortest = Math.Min(shortest, (long)besides.TotalNanoseconds);
        }

        if (settings.WarmUps > 0)
            WarmUp.Of(Once, stop);
        shortest = long.MaxValue;
        Repeat(Once, settings, null, stop);
        return shortest;
    }

    // Its pool has ended when it returns: idle workers would be beside the run that is recorded.
    private static (PlanRun Run, double StepNanoseconds, ImmutableArray<long> Times) TimesOf(
        Plan plan, MeasureSettings settings, Action<long>? report, CancellationToken stop)
    {
        using WorkerPool? pool = settings.IsOnTasks ? null : new(settings.Pool with { RecordingCapacity = 0 });
        void Once(PlanRun one)
        {
            // A run of the library's that nobody waits for would go on beside the next.
            if (pool is null)
                new LibraryTask(one, 0, null).Start(0).Wait(CancellationToken.None);
            else
                pool.Run<PoolTask, Nothing>(new(one, 0), cancellation: stop);
        }

        double reading = settings.WarmUps == 0 ? 0 : WarmedUp(plan, Once, stop);
        double step = Spinner.Calibrate().NanosecondsPerStep;
        var run = new PlanRun(plan, settings.UnitNanoseconds, step, reading / Math.Max(1, plan.Pieces));
        return (run, step, Repeat(() => Once(run), settings, report, stop));
    }

    // Returns what reading the plan takes, in nanoseconds.
    private static double WarmedUp(Plan plan, Action<PlanRun> once, CancellationToken stop)
    {
        var empty = PlanRun.WithoutWork(plan);
        WarmUp.Of(() => once(empty), stop);
        return WarmUp.Of(new PlanWalk(empty).Read, stop);
    }

    private static ImmutableArray<long> Repeat(
        Action once, MeasureSettings settings, Action<long>? report, CancellationToken stop)
    {
        var times = ImmutableArray.CreateBuilder<long>(settings.Repeats);
        for (int i = -settings.WarmUps; i < settings.Repeats; i++)
        {
            stop.ThrowIfCancellationRequested();
            long start = Stopwatch.GetTimestamp();
            once();
            if (i >= 0)
                times.Add((long)Stopwatch.GetElapsedTime(start).TotalNanoseconds);
            report?.Invoke(i + settings.WarmUps + 1);
        }

        return times.ToImmutable();
    }

    private static Traces.Trace Record(BoundProgram program, PlanRun run, MeasureSettings settings,
        CancellationToken stop)
    {
        if (settings.IsOnTasks)
            return TaskLibraryRecording.Of(program, run);
        int notes = (int)Math.Min(NotesMax, Math.Max(1 << 12, run.Plan.Steps.Length * 3L));
        using var pool = new WorkerPool(settings.Pool with { RecordingCapacity = notes });
        // The first runs that write notes are slow: the code that writes them is compiled, its lists are new.
        for (int i = 0; i < settings.WarmUps; i++)
        {
            pool.Run<PoolTask, Nothing>(new(run, 0), cancellation: stop);
            pool.TakeRecording();
        }

        pool.Run<PoolTask, Nothing>(new(run, 0), cancellation: stop);
        return RecordedTrace.Of(pool.TakeRecording(), program, run.Plan.Labels, "pool");
    }
}
