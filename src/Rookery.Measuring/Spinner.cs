using System.Diagnostics;
using System.Runtime.CompilerServices;

namespace Rookery.Measuring;

/// <summary>Work by spinning: a chain of multiplications that takes as long as was asked for.</summary>
/// <remarks>
/// Steps are counted, not time: a worker that loses its processor in the middle has as much left to do afterwards, as
/// real
/// work has. The length of a step is the shortest of some trials, that is the processor undisturbed; where it changes
/// its
/// frequency, or shares a core with another thread, real work takes longer just as this does. Immutable.
/// </remarks>
public sealed class Spinner
{
    // Together with the rests between them some tenths of a second: longer than most of what disturbs a processor.
    private const int Rounds = 10;
    private const int Trials = 40;
    private const int StepsOfTrial = 50_000;

    private Spinner(double nanosecondsPerStep) => NanosecondsPerStep = nanosecondsPerStep;

    /// <summary>How long a step takes.</summary>
    public double NanosecondsPerStep { get; }

    /// <summary>Measures the processor, a tenth of a second.</summary>
    public static Spinner Calibrate()
    {
        double best = double.MaxValue;
        for (int i = 0; i < Rounds * Trials; i++)
        {
            if (i % Trials == 0)
                Thread.Sleep(5);
            long start = Stopwatch.GetTimestamp();
            Spin(StepsOfTrial);
            best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalNanoseconds);
        }

        return new(best / StepsOfTrial);
    }

    /// <summary>Steps that take that long.</summary>
    public long StepsFor(double nanoseconds) => Math.Max(1, (long)Math.Round(nanoseconds / NanosecondsPerStep));

    /// <summary>Does some steps.</summary>
    /// <returns>A number that depends on all of them, so that the compiler leaves none out.</returns>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static ulong Spin(long steps)
    {
        unchecked
        {
            ulong value = (ulong)steps;
            for (long i = 0; i < steps; i++)
                value = (value * 6364136223846793005) + 1442695040888963407;
            return value;
        }
    }
}
