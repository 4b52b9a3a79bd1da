using System.Diagnostics;

namespace Rookery.Measuring.Plans;

/// <summary>A plan with the length of its units, shared by all who run it. Immutable.</summary>
/// <param name="plan">The plan.</param>
/// <param name="unitNanoseconds">Nanoseconds that a unit takes; 0 runs the plan without any work or waiting.</param>
/// <param name="stepNanoseconds">Nanoseconds that a step of a <see cref="Spinner"/> takes.</param>
/// <param name="readNanoseconds">
/// What reading the plan takes for each piece of work: as much shorter is each piece, so that the two together take as
/// long as the program says.
/// </param>
internal sealed class PlanRun(Plan plan, double unitNanoseconds, double stepNanoseconds, double readNanoseconds)
{
    private readonly double _stepsOfUnit = unitNanoseconds / stepNanoseconds;
    private readonly double _stepsOfReading = readNanoseconds / stepNanoseconds;

    /// <summary>A plan without any work or waiting.</summary>
    public static PlanRun WithoutWork(Plan plan) => new(plan, 0, 1, 0);

    /// <summary>The plan.</summary>
    public Plan Plan { get; } = plan;

    /// <summary>Nanoseconds that a unit of work takes.</summary>
    public double UnitNanoseconds => unitNanoseconds;

    /// <summary>Computes for some units.</summary>
    public void Work(long units)
    {
        long steps = (long)((units * _stepsOfUnit) - _stepsOfReading + 0.5);
        if (steps > 0)
            Spinner.Spin(steps);
    }

    /// <summary>
    /// Waits for some units without using the processor, as far as the operating system's clock is fine enough.
    /// </summary>
    public void Wait(long units)
    {
        long start = Stopwatch.GetTimestamp();
        double left;
        while ((left = (units * unitNanoseconds) - Stopwatch.GetElapsedTime(start).TotalNanoseconds) > 0)
        {
            // A sleep may take a millisecond longer than asked for; the rest is waited out by giving the processor
            // away.
            if (left > 3e6)
                Thread.Sleep((int)Math.Min(int.MaxValue, (left / 1e6) - 2));
            else
                Thread.Yield();
        }
    }
}
