using System.Diagnostics;
using Rookery.Pool;

namespace Rookery.Measuring.Plans;

/// <summary>
/// A task that keeps its worker busy for a while and says how long it was: what its run takes besides is what the pool
/// takes to begin and to end a run.
/// </summary>
internal readonly struct BusyTask : IForkTask<long>
{
    // Long enough for the caller to have fallen asleep, as it has in a run with work in it: it then has to be woken.
    private const double Microseconds = 100;

    /// <inheritdoc/>
    /// <returns>From its begin to its end, in ticks of <see cref="Stopwatch"/>.</returns>
    public long Run(Worker worker)
    {
        long begin = Stopwatch.GetTimestamp();
        long end;
        do
        {
            end = Stopwatch.GetTimestamp();
        }
        while (Stopwatch.GetElapsedTime(begin, end).TotalMicroseconds < Microseconds);
        return end - begin;
    }
}
