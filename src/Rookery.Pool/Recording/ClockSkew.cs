using System.Diagnostics;

namespace Rookery.Pool.Recording;

/// <summary>How far the steady clock may differ between two processors, as two threads can tell.</summary>
/// <remarks>
/// Two threads pass a word to and fro, each with its reading of the clock. If one clock is ahead of the other by d,
/// then the
/// quickest message one way seems d longer than it was, and the quickest one back d shorter: both seem to take at
/// least 0
/// only if -there &lt;= d &lt;= back. So the larger of the two quickest messages bounds the difference. Source: the
/// bound of
/// F. Cristian, "Probabilistic clock synchronization", Distributed Computing 3 (1989).
/// </remarks>
internal static class ClockSkew
{
    private const int Rounds = 2000;

    private static readonly Lazy<long> s_bound = new(Measure);

    /// <summary>The bound in nanoseconds, at least 1; measured once a process.</summary>
    public static long BoundNanoseconds => s_bound.Value;

    private static long Measure()
    {
        long[] word = new long[16];
        long[] stamp = new long[16];
        long there = long.MaxValue;
        long back = long.MaxValue;
        var other = new Thread(() =>
        {
            for (long round = 1; round <= Rounds; round++)
            {
                // order: acquire and release; the stamps travel with the word. pairs with: the same below.
                while (Volatile.Read(ref word[0]) != round)
                    Thread.SpinWait(1);
                there = Math.Min(there, Stopwatch.GetTimestamp() - stamp[0]);
                stamp[8] = Stopwatch.GetTimestamp();
                Volatile.Write(ref word[8], round);
            }
        })
        { IsBackground = true };
        other.Start();
        for (long round = 1; round <= Rounds; round++)
        {
            stamp[0] = Stopwatch.GetTimestamp();
            Volatile.Write(ref word[0], round);
            var spin = new SpinWait();
            while (Volatile.Read(ref word[8]) != round)
                spin.SpinOnce(sleep1Threshold: -1);
            back = Math.Min(back, Stopwatch.GetTimestamp() - stamp[8]);
        }

        other.Join();
        double scale = 1e9 / Stopwatch.Frequency;
        return Math.Max(1, (long)Math.Ceiling(Math.Max(Math.Abs(there), Math.Abs(back)) * scale));
    }
}
