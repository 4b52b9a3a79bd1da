using System.Diagnostics;
using System.Runtime.CompilerServices;
using Rookery.Pool;
using Rookery.Pool.Deques;

namespace Rookery.Measuring.Calibration;

/// <summary>Measures what the operations of the pool cost on this computer.</summary>
/// <remarks>
/// Each cost is the middle of some rounds, with the quarters beside it: on a computer that does other things as well,
/// rounds
/// differ. What cannot be measured without others' help is an assumption, and says so. Some seconds in all.
/// </remarks>
public static class Calibrator
{
    private const int Rounds = 21;
    private const int FibonacciOf = 22;
    private const int Steals = 20_000;

    /// <summary>Measures everything.</summary>
    /// <param name="report">Told of each cost that is done.</param>
    /// <param name="stop">Ends it.</param>
    public static Calibration Measure(Action<string>? report = null, CancellationToken stop = default)
    {
        var costs = new List<Cost>();
        void Add(Cost cost)
        {
            costs.Add(cost);
            report?.Invoke(cost.Name);
            stop.ThrowIfCancellationRequested();
        }

        (Cost fork, Cost take) = ForkAndTake();
        Add(fork);
        Add(take);
        Add(Probe());
        Add(Steal());
        Add(LostRace());
        (Cost signal, Cost wake, Cost sleep) = HandOver();
        Add(sleep);
        Add(wake);
        Add(signal);
        Add(StartThread());
        Add(Switch(wake));
        return new() { Costs = [.. costs], Processors = Environment.ProcessorCount };
    }

    // What forking and joining adds to a plain call, shared out as a push and a take of the deque alone take.
    private static (Cost Fork, Cost Take) ForkAndTake()
    {
        using var pool = new WorkerPool(new PoolOptions { Workers = 1 });
        const double forks = 28_656;
        var pairs = new List<double>();
        double share = PushShare();
        for (int i = -20; i < Rounds; i++)
        {
            double plain = double.MaxValue;
            double pooled = double.MaxValue;
            for (int best = 0; best < 8; best++)
            {
                plain = Math.Min(plain, Nanoseconds(() => pool.Run(static (_, n) => Plain(n), FibonacciOf)));
                pooled = Math.Min(
                    pooled, Nanoseconds(() => pool.Run<ForkingFibonacci, long>(new(FibonacciOf))));
            }

            if (i >= 0)
                pairs.Add(Math.Max(0.1, (pooled - plain) / forks));
        }

        return (
            Cost.Of("fork", "a fork's share of what fork and join add to a plain call, without steals", pairs.Select(
                p => p * share)),
            Cost.Of("take", "a join's share of the same", pairs.Select(p => p * (1 - share))));
    }

    private static double PushShare()
    {
        var deque = new LockFreeDeque<NoSteps>(FencePlacement.Thief, 1 << 12);
        double push = double.MaxValue;
        double take = double.MaxValue;
        for (int i = 0; i < 400; i++)
        {
            push = Math.Min(push, Nanoseconds(() => Push(deque, 1000)));
            take = Math.Min(take, Nanoseconds(() => TakeAll(deque)));
        }

        return push / (push + take);
    }

    // The owner pushes and takes all the time, and the thief reads both counters over and over.
    private static Cost Probe()
    {
        var deque = new LockFreeDeque<NoSteps>(FencePlacement.Thief);
        return Cost.Of(
            "probe", "reading both counters of a deque that its owner is using", WithOther(
                stopped =>
                {
                    while (!stopped())
                    {
                        Push(deque, 20);
                        TakeAll(deque);
                    }
                },
                () =>
                {
                    long sum = 0;
                    for (int i = 0; i < 20_000; i++)
                        sum += deque.Count;
                    GC.KeepAlive(sum);
                    return 20_000;
                }));
    }

    // The owner fills the deque from its processor, so that its lines are there, and the thief empties it.
    private static Cost Steal()
    {
        var rounds = new List<double>();
        for (int i = 0; i < Rounds; i++)
        {
            var deque = new LockFreeDeque<NoSteps>(FencePlacement.Thief);
            var owner = new Thread(() => Push(deque, Steals));
            owner.Start();
            owner.Join();
            rounds.Add(Nanoseconds(() =>
            {
                while (deque.TrySteal(out _) != StealOutcome.Empty)
                {
                }
            }) / Steals);
        }

        return Cost.Of("steal", "a steal from a deque that another thread has filled, barrier included", rounds);
    }

    // A rival takes the task at the last moment: the time of both attempts, less that of one that succeeds.
    private static Cost LostRace()
    {
        var rounds = new List<double>();
        for (int i = 0; i < Rounds; i++)
        {
            double with = StealAll(isContested: true) / (Steals / 2);
            double without = StealAll(isContested: false) / Steals;
            rounds.Add(Math.Max(1, with - without));
        }

        return Cost.Of(
            "lost-race", "an attempt whose task a rival takes just before the contest; the line stays in one cache",
                rounds);
    }

    private static double StealAll(bool isContested)
    {
        var deque = new LockFreeDeque<RivalSteps>(FencePlacement.Thief);
        for (int i = 0; i < Steals; i++)
            deque.Push(i);
        RivalSteps.Set(isContested ? deque : null);
        double time = Nanoseconds(() =>
        {
            while (deque.TrySteal(out _) != StealOutcome.Empty)
            {
            }
        });
        RivalSteps.Set(null);
        return time;
    }

    // Two threads hand a token to and fro by events. What the sender pays, and how long until the other runs.
    private static (Cost Signal, Cost Wake, Cost Sleep) HandOver()
    {
        using var there = new AutoResetEvent(false);
        using var back = new AutoResetEvent(false);
        const int count = 300;
        var signals = new List<double>();
        var wakes = new List<double>();
        var sleeps = new List<double>();
        for (int i = 0; i < Rounds; i++)
        {
            (double signal, double whole) = HandOverOnce(there, back, count);
            signals.Add(signal);
            wakes.Add(Math.Max(1, (whole / 2) - signal));
            sleeps.Add(Nanoseconds(() =>
            {
                for (int k = 0; k < count; k++)
                {
                    Interlocked.MemoryBarrierProcessWide();
                    there.Set();
                    there.WaitOne();
                }
            }) / count);
        }

        return (
            Cost.Of("signal", "setting an event on which another thread sleeps", signals),
            Cost.Of("wake", "half a hand-over to a sleeping thread and back, less the signal", wakes),
            Cost.Of("sleep", "the barrier and the wait on an event that is set already: at least this much", sleeps));
    }

    // The middle of the signals, and the middle of the hand-overs there and back: a mean would be other programs'
    // share.
    private static (double Signal, double ThereAndBack) HandOverOnce(AutoResetEvent there, AutoResetEvent back,
        int count)
    {
        var other = new Thread(() =>
        {
            for (int k = 0; k < count; k++)
            {
                there.WaitOne();
                back.Set();
            }
        });
        other.Start();
        Thread.Sleep(1);
        double[] signals = new double[count];
        double[] wholes = new double[count];
        for (int k = 0; k < count; k++)
        {
            long start = Stopwatch.GetTimestamp();
            there.Set();
            signals[k] = Stopwatch.GetElapsedTime(start).TotalNanoseconds;
            back.WaitOne();
            wholes[k] = Stopwatch.GetElapsedTime(start).TotalNanoseconds;
        }

        other.Join();
        return (Middle(signals), Middle(wholes));
    }

    private static double Middle(double[] values)
    {
        Array.Sort(values);
        return values[values.Length / 2];
    }

    private static Cost StartThread()
    {
        var rounds = new List<double>();
        for (int i = 0; i < Rounds * 5; i++)
        {
            long start = Stopwatch.GetTimestamp();
            long begun = 0;
            var thread = new Thread(() => begun = Stopwatch.GetTimestamp());
            thread.Start();
            thread.Join();
            rounds.Add((begun - start) * (1e9 / Stopwatch.Frequency));
        }

        return Cost.Of("start-thread", "from making a thread to its first instruction", rounds);
    }

    // Where threads can be held to one processor: two of them there hand a token to and fro.
    private static Cost Switch(Cost wake)
    {
        if (!OperatingSystem.IsLinux() && !OperatingSystem.IsWindows())
        {
            return new(
                "switch", wake.Median, wake.Low, wake.High,
                "ASSUMPTION: as a wake; threads cannot be held to one processor here");
        }

        using var process = Process.GetCurrentProcess();
        IntPtr all = process.ProcessorAffinity;
        try
        {
            process.ProcessorAffinity = (IntPtr)(all & -all);
            return Cost.Of(
                "switch",
                "half a hand-over to and fro with both threads on one processor, less setting and passing an event",
                SwitchesOnOneProcessor());
        }
        finally
        {
            process.ProcessorAffinity = all;
        }
    }

    // What was set is at once another's turn there, so that the time of the setting says nothing: what one thread takes
    // to set and to pass an event of its own is what is no switch.
    private static IEnumerable<double> SwitchesOnOneProcessor()
    {
        const int count = 300;
        using var there = new AutoResetEvent(false);
        using var back = new AutoResetEvent(false);
        for (int i = 0; i < Rounds; i++)
        {
            double alone = Nanoseconds(() =>
            {
                for (int k = 0; k < count; k++)
                {
                    there.Set();
                    there.WaitOne();
                }
            }) / count;
            yield return Math.Max(1, (HandOverOnce(there, back, count).ThereAndBack / 2) - alone);
        }
    }

    private static List<double> WithOther(Action<Func<bool>> other, Func<int> measured)
    {
        var rounds = new List<double>();
        bool isOver = false;
        var thread = new Thread(() => other(() => Volatile.Read(ref isOver)));
        thread.Start();
        for (int i = 0; i < Rounds; i++)
        {
            int count = 1;
            double time = Nanoseconds(() => count = measured());
            rounds.Add(time / count);
        }

        Volatile.Write(ref isOver, true);
        thread.Join();
        return rounds;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void Push(LockFreeDeque<NoSteps> deque, int count)
    {
        for (int i = 0; i < count; i++)
            deque.Push(i);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void TakeAll(LockFreeDeque<NoSteps> deque)
    {
        while (deque.TakeNewest() >= 0)
        {
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static long Plain(int n) => n < 2 ? n : Plain(n - 1) + Plain(n - 2);

    private static double Nanoseconds(Action action)
    {
        long start = Stopwatch.GetTimestamp();
        action();
        return Stopwatch.GetElapsedTime(start).TotalNanoseconds;
    }
}
