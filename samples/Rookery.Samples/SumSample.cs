using Rookery.Pool;

namespace Rookery.Samples;

/// <summary>The sum of many numbers: a reduction by halves.</summary>
internal sealed class SumSample() : Sample("sum")
{
    private readonly int[] _numbers = [.. Enumerable.Range(0, 4_000_000)];

    public override long Alone()
    {
        long sum = 0;
        foreach (int number in _numbers)
            sum += number;
        return sum;
    }

    public override long OnPool(WorkerPool pool) => pool.Run(
        static (worker, numbers) => worker.Reduce<Part, long>(0, numbers.Length, new(numbers), 0), _numbers);

    public override long OnTasks()
    {
        long sum = 0;
        Parallel.ForEach(
            System.Collections.Concurrent.Partitioner.Create(0, _numbers.Length),
            range => Interlocked.Add(ref sum, Part.Sum(_numbers, range.Item1, range.Item2)));
        return sum;
    }

    private readonly struct Part(int[] numbers) : IReduction<long>
    {
        public long Map(Worker worker, int from, int to) => Sum(numbers, from, to);

        public long Combine(long left, long right) => left + right;

        public static long Sum(int[] numbers, int from, int to)
        {
            long sum = 0;
            for (int i = from; i < to; i++)
                sum += numbers[i];
            return sum;
        }
    }
}
