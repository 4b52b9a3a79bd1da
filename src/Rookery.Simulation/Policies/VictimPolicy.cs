using Rookery.Notation.Randomness;
using Rookery.Simulation.Engine;

namespace Rookery.Simulation.Policies;

/// <summary>Chooses whom a thief looks at; one small type for each value of <see cref="VictimChoice"/>.</summary>
internal abstract class VictimPolicy
{
    /// <summary>The policy of an option value.</summary>
    public static VictimPolicy Of(VictimChoice choice, ulong seed) => choice switch
    {
        VictimChoice.Random => new RandomVictim(seed),
        VictimChoice.RoundRobin => new RoundRobinVictim(),
        VictimChoice.Lowest => new LowestVictim(),
        VictimChoice.LastSuccess => new LastSuccessVictim(seed),
        VictimChoice.Nearest => new NearestVictim(),
        VictimChoice.Fullest => new FullestVictim(),
    };

    /// <summary>The victim of the thief's next look: never the thief itself.</summary>
    /// <param name="thief">The thief's number.</param>
    /// <param name="workers">All workers, at least two.</param>
    public abstract int Choose(int thief, List<WorkerState> workers);

    /// <summary>Told after each successful steal.</summary>
    public virtual void Succeeded(WorkerState thief) => thief.LastSuccess = thief.Victim;

    /// <summary>Told after each look that brought nothing.</summary>
    public virtual void Failed(WorkerState thief)
    {
    }
}

/// <summary>Each of the others with the same chance.</summary>
/// <remarks>
/// Worker <c>w</c> draws from the xoshiro256** stream of the run's seed after <c>w</c> jumps, so that the draws of one
/// worker do not depend on how many others draw.
/// </remarks>
internal class RandomVictim(ulong seed) : VictimPolicy
{
    private Xoshiro256StarStar _next = Xoshiro256StarStar.FromSeed(seed);
    private readonly List<Xoshiro256StarStar> _streams = [];

    public override int Choose(int thief, List<WorkerState> workers)
    {
        WorkerState state = workers[thief];
        if (!state.HasRandom)
        {
            state.Random = StreamOf(thief);
            state.HasRandom = true;
        }

        int drawn = (int)state.Random.NextBelow((ulong)(workers.Count - 1));
        return drawn >= thief ? drawn + 1 : drawn;
    }

    private Xoshiro256StarStar StreamOf(int worker)
    {
        while (_streams.Count <= worker)
        {
            _streams.Add(_next);
            _next.Jump();
        }

        return _streams[worker];
    }
}

/// <summary>The others in turn, going on where it stopped.</summary>
internal sealed class RoundRobinVictim : VictimPolicy
{
    public override int Choose(int thief, List<WorkerState> workers)
    {
        WorkerState state = workers[thief];
        int step = state.VictimCursor % (workers.Count - 1);
        state.VictimCursor = step + 1;
        return (thief + 1 + step) % workers.Count;
    }
}

/// <summary>The others from the lowest number up; from the front again after a success.</summary>
internal sealed class LowestVictim : VictimPolicy
{
    public override int Choose(int thief, List<WorkerState> workers)
    {
        int step = workers[thief].VictimCursor % (workers.Count - 1);
        return step >= thief ? step + 1 : step;
    }

    public override void Succeeded(WorkerState thief)
    {
        base.Succeeded(thief);
        thief.VictimCursor = 0;
    }

    public override void Failed(WorkerState thief) => thief.VictimCursor++;
}

/// <summary>The worker of its last successful steal until that fails, then at random.</summary>
internal sealed class LastSuccessVictim(ulong seed) : RandomVictim(seed)
{
    public override int Choose(int thief, List<WorkerState> workers) =>
        workers[thief].LastSuccess >= 0 ? workers[thief].LastSuccess : base.Choose(thief, workers);

    public override void Failed(WorkerState thief) => thief.LastSuccess = -1;
}

/// <summary>
/// The others by their distance around a ring, right before left; from the front again after a success.
/// </summary>
internal sealed class NearestVictim : VictimPolicy
{
    public override int Choose(int thief, List<WorkerState> workers)
    {
        int step = workers[thief].VictimCursor % (workers.Count - 1);
        int distance = (step / 2) + 1;
        int victim = step % 2 == 0 ? thief + distance : thief - distance;
        return (victim + workers.Count) % workers.Count;
    }

    public override void Succeeded(WorkerState thief)
    {
        base.Succeeded(thief);
        thief.VictimCursor = 0;
    }

    public override void Failed(WorkerState thief) => thief.VictimCursor++;
}

/// <summary>The worker with the most queued tasks, the lowest number on a tie.</summary>
/// <remarks>An oracle: it reads all deques at no cost, which no real machine can. It shows the best that choice can
/// do.</remarks>
internal sealed class FullestVictim : VictimPolicy
{
    public override int Choose(int thief, List<WorkerState> workers)
    {
        int best = thief == 0 ? 1 : 0;
        for (int i = best + 1; i < workers.Count; i++)
        {
            if (i != thief && workers[i].Deque.Count > workers[best].Deque.Count)
                best = i;
        }

        return best;
    }
}
