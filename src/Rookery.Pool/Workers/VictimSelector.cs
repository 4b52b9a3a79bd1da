namespace Rookery.Pool.Workers;

/// <summary>Chooses the next victim of one worker.</summary>
/// <remarks>Mutable, for the worker's thread. Random draws are xorshift64*, seeded per worker by a splitting
/// step.</remarks>
internal sealed class VictimSelector(PoolOptions options, int self)
{
    private ulong _random = Mix(unchecked((ulong)options.Seed + ((ulong)self * 0x9E3779B97F4A7C15)));
    private int _turn = -1;
    private int _last = -1;

    /// <summary>Whom to look at next; -1 when there is nobody else.</summary>
    public int Next(WorkerCore[] workers)
    {
        int others = workers.Length - 1;
        if (others == 0)
            return -1;
        switch (options.Victim)
        {
            case VictimChoice.LastSuccess when _last >= 0:
                return _last;
            case VictimChoice.RoundRobin or VictimChoice.Lowest:
                _turn = (_turn + 1) % others;
                return Other(_turn);
            case VictimChoice.Nearest:
                // 1 to the right, 1 to the left, 2 to the right, and so on around the ring.
                _turn = (_turn + 1) % others;
                int distance = (_turn / 2) + 1;
                int at = _turn % 2 == 0 ? self + distance : self - distance + workers.Length;
                return at % workers.Length;
            case VictimChoice.Fullest:
                return Fullest(workers);
            default:
                return Other(Draw(others));
        }
    }

    /// <summary>Learns how a look ended.</summary>
    public void Learn(int victim, bool isSuccess)
    {
        _last = isSuccess ? victim : -1;
        if (isSuccess && options.Victim is VictimChoice.Lowest or VictimChoice.Nearest)
            _turn = -1;
    }

    private int Other(int index) => index < self ? index : index + 1;

    private int Fullest(WorkerCore[] workers)
    {
        (int best, int most) = (Other(0), -1);
        foreach (WorkerCore worker in workers)
        {
            if (worker.Number != self && worker.Queue.Count is var count && count > most)
                (best, most) = (worker.Number, count);
        }

        return best;
    }

    private int Draw(int count)
    {
        unchecked
        {
            _random ^= _random >> 12;
            _random ^= _random << 25;
            _random ^= _random >> 27;
            return (int)Math.BigMul(_random * 0x2545F4914F6CDD1D, (ulong)count, out _);
        }
    }

    private static ulong Mix(ulong seed)
    {
        unchecked
        {
            seed = (seed ^ (seed >> 30)) * 0xBF58476D1CE4E5B9;
            seed = (seed ^ (seed >> 27)) * 0x94D049BB133111EB;
            return (seed ^ (seed >> 31)) | 1;
        }
    }
}
