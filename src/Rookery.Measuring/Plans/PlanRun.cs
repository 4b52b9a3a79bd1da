using System.Diagnostics;

namespace Rookery.Measuring.Plans;

/// <summary>A plan with the length of its units, shared by all who run it. Immutable.</summary>
internal sealed class PlanRun(Plan plan, Spinner spinner, double unitNanoseconds)
{
    /// <summary>The plan.</summary>
    public Plan Plan { get; } = plan;

    /// <summary>Nanoseconds that a unit of work takes.</summary>
    public double UnitNanoseconds => unitNanoseconds;

    /// <summary>Computes for some units.</summary>
    public void Work(long units) => Spinner.Spin(spinner.StepsFor(units * unitNanoseconds));

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
