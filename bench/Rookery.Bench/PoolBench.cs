using System.Diagnostics;
using System.Globalization;
using System.Runtime.CompilerServices;
using Rookery.Measuring;
using Rookery.Pool;

namespace Rookery.Bench;

/// <summary>
/// The pool: what a fork and its join cost, beside the runtime's task library; all in one process, in turn.
/// </summary>
internal static class PoolBench
{
    private const int Small = 27;
    private const double SmallForks = 317_810;

    /// <summary>Runs it.</summary>
    public static void Run(int rounds)
    {
        Forks(rounds);
        SpeedUp(rounds);
        Sorting(Math.Max(3, rounds / 4));
        Recording(rounds);
    }

    /// <summary>
    /// 10^9 forks with stealing, and not one lost: fib(38) eight times, 126,491,970 calls of which half fork.
    /// </summary>
    public static void Many()
    {
        long forks = 0;
        long start = Stopwatch.GetTimestamp();
        foreach (FencePlacement fence in Enum.GetValues<FencePlacement>())
        {
            using var pool = new WorkerPool(new PoolOptions { Workers = 2, Fence = fence });
            for (int i = 0; i < 8; i++)
            {
                if (pool.Run<Fib, long>(new(38)) != 39_088_169)
                    throw new InvalidOperationException("A fork was lost, or done twice.");
                forks += 63_245_985;
            }
        }

        Say($"{forks:N0} forks, none lost, in {Stopwatch.GetElapsedTime(start).TotalSeconds:0} s");
    }

    private static void Forks(int rounds)
    {
        using var thief = new WorkerPool(new PoolOptions { Workers = 1 });
        using var owner = new WorkerPool(new PoolOptions { Workers = 1, Fence = FencePlacement.Owner });
        double[] best = Best(
            rounds * 10,
            () => Plain(Small),
            () => thief.Run<Fib, long>(new(Small)),
            () => owner.Run<Fib, long>(new(Small)),
            () => thief.Run(Fib.ByFunction, Small));
        double task = Best(Math.Max(2, rounds / 2), () => Tasks(20))[0] / 10_945;
        double plain = best[0] / SmallForks;
        Say($"plain call                      {plain:0.00} ns a node");
        Say($"fork+join, fence of the thief   {(best[1] / SmallForks) - plain:0.00} ns more");
        Say($"fork+join, fence in the take    {(best[2] / SmallForks) - plain:0.00} ns more");
        Say($"fork+join, functions            {(best[3] / SmallForks) - plain:0.00} ns more");
        double times = (task - plain) / ((best[1] / SmallForks) - plain);
        Say($"a task of the runtime           {task - plain:0.0} ns more, {times:0}x");
    }

    private static void SpeedUp(int rounds)
    {
        using var one = new WorkerPool(new PoolOptions { Workers = 1 });
        using var two = new WorkerPool(new PoolOptions { Workers = 2 });
        double[] best = Best(
            rounds * 2, () => one.Run<Fib, long>(new(32)), () => two.Run<Fib, long>(new(32)),
            () => one.Run<Coarse, long>(new(8)), () => two.Run<Coarse, long>(new(8)));
        double oneCpu = Cpu(() => one.Run<Fib, long>(new(34)));
        double twoCpu = Cpu(() => two.Run<Fib, long>(new(34)));
        Say($"fib(34), processor time of 2 workers over 1  {twoCpu / oneCpu:0.00}");
        Say($"fib(32) without cut-off, 2 workers over 1   {best[0] / best[1]:0.00}");
        Say($"256 pieces of 0.1 ms, 2 workers over 1      {best[2] / best[3]:0.00}");
    }

    private static void Sorting(int rounds)
    {
        using var pool = new WorkerPool(new PoolOptions { Workers = 2 });
        var random = new Random(1);
        int[] items = [.. Enumerable.Range(0, 10_000_000).Select(_ => random.Next())];
        int[] copy = new int[items.Length];
        int[] space = new int[items.Length];
        double Time(Action<int[]> sort)
        {
            items.CopyTo(copy, 0);
            long start = Stopwatch.GetTimestamp();
            sort(copy);
            return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        }

        (double ours, double theirs, double alone) = (double.MaxValue, double.MaxValue, double.MaxValue);
        for (int i = 0; i < rounds; i++)
        {
            ours = Math.Min(ours, Time(a => pool.Run<Sort, Nothing>(new(a, space, 0, a.Length))));
            theirs = Math.Min(theirs, Time(a => SortByInvoke(a, space, 0, a.Length)));
            alone = Math.Min(alone, Time(Array.Sort));
        }

        Say($"sorting 10^7: pool {ours:0} ms, Parallel.Invoke {theirs:0} ms, Array.Sort alone {alone:0} ms");
    }

    private static void Recording(int rounds)
    {
        var spinner = Spinner.Calibrate();
        long steps = spinner.StepsFor(1000);
        using var off = new WorkerPool(new PoolOptions { Workers = 1 });
        using var on = new WorkerPool(new PoolOptions { Workers = 1, RecordingCapacity = 1 << 18 });
        double[] best = Best(
            rounds * 4, () => off.Run<Grains, long>(new(13, steps)), () => on.Run<Grains, long>(new(13, steps)),
            () => off.Run(Loop, steps), () => on.Run(Loop, steps));
        Say($"recording at a grain of 1 us, forks and joins: {(best[1] / best[0]) - 1:P1} longer");
        Say($"recording at a grain of 1 us, a loop:          {(best[3] / best[2]) - 1:P1} longer");
        Say($"a look at the clock                            {Clock():0.0} ns");
    }

    private static long Loop(Worker worker, long steps)
    {
        worker.For(0, 1 << 13, steps, static (length, _) => Spinner.Spin(length), 1);
        return 0;
    }

    // A note is little more than a look at the clock, whose price is the computer's.
    private static double Clock()
    {
        const int looks = 1000;
        double[] best = Best(200, static () =>
        {
            long sum = 0;
            for (int i = 0; i < looks; i++)
                sum += Stopwatch.GetTimestamp();
            return sum;
        });
        return best[0] / looks;
    }

    // Where other programs have a part of the processors, wall time tells about them, and processor time about us.
    private static double Cpu(Func<long> run)
    {
        double best = double.MaxValue;
        for (int i = 0; i < 5; i++)
        {
            TimeSpan before = Environment.CpuUsage.TotalTime;
            GC.KeepAlive(run());
            best = Math.Min(best, (Environment.CpuUsage.TotalTime - before).TotalMilliseconds);
        }

        return best;
    }

    private static double[] Best(int rounds, params Func<long>[] cases)
    {
        double[] best = new double[cases.Length];
        Array.Fill(best, double.MaxValue);
        for (int round = 0; round < rounds; round++)
        {
            for (int i = 0; i < cases.Length; i++)
            {
                long start = Stopwatch.GetTimestamp();
                GC.KeepAlive(cases[i]());
                best[i] = Math.Min(best[i], Stopwatch.GetElapsedTime(start).TotalNanoseconds);
            }
        }

        return best;
    }

    private static void SortByInvoke(int[] items, int[] space, int from, int to)
    {
        if (to - from <= Sort.Grain)
        {
            Array.Sort(items, from, to - from);
            return;
        }

        int middle = from + ((to - from) / 2);
        Parallel.Invoke(
            () => SortByInvoke(items, space, from, middle), () => SortByInvoke(items, space, middle, to));
        Sort.Merge(items, space, from, middle, to);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static long Plain(int n)
    {
        if (n < 2)
            return n;
        long left = Plain(n - 1);
        return left + Plain(n - 2);
    }

    private static long Tasks(int n)
    {
        if (n < 2)
            return n;
        Task<long> left = Task.Run(() => Tasks(n - 1));
        long right = Tasks(n - 2);
        return left.GetAwaiter().GetResult() + right;
    }

    private static void Say(FormattableString text) => Console.WriteLine(text.ToString(CultureInfo.InvariantCulture));

    private readonly struct Fib(int n) : IForkTask<long>
    {
        public long Run(Worker worker)
        {
            if (n < 2)
                return n;
            var left = worker.Fork<Fib, long>(new(n - 1));
            long right = new Fib(n - 2).Run(worker);
            return worker.Join(left) + right;
        }

        public static long ByFunction(Worker worker, int n)
        {
            if (n < 2)
                return n;
            var left = worker.Fork(ByFunction, n - 1);
            long right = ByFunction(worker, n - 2);
            return worker.Join(left) + right;
        }
    }

    private readonly struct Coarse(int height) : IForkTask<long>
    {
        public long Run(Worker worker)
        {
            if (height == 0)
                return (long)(Spinner.Spin(60_000) & 1);
            var left = worker.Fork<Coarse, long>(new(height - 1));
            long right = new Coarse(height - 1).Run(worker);
            return worker.Join(left) + right;
        }
    }

    private readonly struct Grains(int height, long steps) : IForkTask<long>
    {
        public long Run(Worker worker)
        {
            if (height == 0)
                return (long)(Spinner.Spin(steps) & 1);
            var left = worker.Fork<Grains, long>(new(height - 1, steps));
            long right = new Grains(height - 1, steps).Run(worker);
            return worker.Join(left) + right;
        }
    }

    private readonly struct Sort(int[] items, int[] space, int from, int to) : IForkTask<Nothing>
    {
        public const int Grain = 1 << 14;

        public Nothing Run(Worker worker)
        {
            if (to - from <= Grain)
            {
                Array.Sort(items, from, to - from);
                return default;
            }

            int middle = from + ((to - from) / 2);
            var left = worker.Fork<Sort, Nothing>(new(items, space, from, middle));
            new Sort(items, space, middle, to).Run(worker);
            worker.Join(left);
            Merge(items, space, from, middle, to);
            return default;
        }

        public static void Merge(int[] items, int[] space, int from, int middle, int to)
        {
            (int a, int b) = (from, middle);
            for (int at = from; at < to; at++)
                space[at] = b == to || (a < middle && items[a] <= items[b]) ? items[a++] : items[b++];
            Array.Copy(space, from, items, from, to - from);
        }
    }
}
