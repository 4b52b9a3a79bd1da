using System.Diagnostics;

namespace Rookery.Measuring;

/// <summary>Runs something again and again until the compiler has done its best with it.</summary>
/// <remarks>
/// The runtime compiles code quickly at first and well later: a method that was called 30 times is compiled anew once
/// nothing new has been compiled for a tenth of a second, beside the program. Until then the pool and the reader of
/// plans take two to three times as long for a task, which is a tenth of a task of a microsecond.
/// </remarks>
internal static class WarmUp
{
    private const int RoundsMax = 15;
    private const int CallsOfRound = 40;
    private const double MillisecondsOfRound = 40;

    /// <summary>Runs it until two rounds in a row were no quicker than those before, some seconds at most.</summary>
    /// <param name="once">What is run: takes the shorter the better.</param>
    /// <param name="stop">Ends it.</param>
    /// <returns>The shortest time, in nanoseconds.</returns>
    public static double Of(Action once, CancellationToken stop)
    {
        double best = double.MaxValue;
        for (int round = 0, noQuicker = 0; round < RoundsMax && noQuicker < 2; round++)
        {
            double shortest = ShortestOf(once, stop);
            noQuicker = shortest > 0.95 * best ? noQuicker + 1 : 0;
            best = Math.Min(best, shortest);

            // Longer than the tenth of a second after which the runtime begins, and than it then takes.
            stop.WaitHandle.WaitOne(150);
        }

        return best;
    }

    private static double ShortestOf(Action once, CancellationToken stop)
    {
        double shortest = double.MaxValue;
        long begin = Stopwatch.GetTimestamp();
        for (int call = 0; call < CallsOfRound; call++)
        {
            stop.ThrowIfCancellationRequested();
            long start = Stopwatch.GetTimestamp();
            once();
            shortest = Math.Min(shortest, Stopwatch.GetElapsedTime(start).TotalNanoseconds);

            // Of a large plan one run has called everything often enough.
            if (Stopwatch.GetElapsedTime(begin).TotalMilliseconds > MillisecondsOfRound)
                break;
        }

        return shortest;
    }
}
