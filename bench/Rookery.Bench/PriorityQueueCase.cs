namespace Rookery.Bench;

/// <summary>
/// The limit for an engine on the runtime's own priority queue: one dequeue and enqueue an event, nothing else.
/// </summary>
internal sealed class PriorityQueueCase(int workers)
    : BenchCase($"runtime's priority queue alone, {workers} entries")
{
    private const long EventCount = 5_000_000;

    public override BenchOutcome Run()
    {
        var queue = new PriorityQueue<int, long>();
        for (int i = 0; i < workers; i++)
            queue.Enqueue(i, i);
        long checksum = 0;
        ulong random = 88172645463325252;
        for (long i = 0; i < EventCount; i++)
        {
            queue.TryDequeue(out int worker, out long time);
            unchecked
            {
                checksum = (checksum * 31) + worker;
                random ^= random << 13;
                random ^= random >> 7;
                random ^= random << 17;
            }

            queue.Enqueue(worker, time + 1 + (long)(random & 63));
        }

        return new(EventCount, checksum, null);
    }
}
