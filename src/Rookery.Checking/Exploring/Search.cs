using Rookery.Checking.Properties;
using Rookery.Checking.States;

namespace Rookery.Checking.Exploring;

/// <summary>Breadth first through all states of a scenario.</summary>
/// <remarks>
/// The states of a level are cut into parts of a fixed size. Parts make steps at the same time and sort what they find
/// by shard; then shards take the finds over at the same time, each in the order of the parts. Neither the sizes nor
/// the orders depend on how many threads there are, so that every number and every witness is the same on one core
/// and on sixty-four, and the checker itself stays without threads.
/// </remarks>
internal sealed class Search
{
    /// <summary>How many shards there are.</summary>
    public const int Shards = 16;

    /// <summary>Where in a hash the shard stands.</summary>
    public const int ShardShift = 60;

    /// <summary>Most states that one part goes on from.</summary>
    public const int StatesAPart = 512;

    private const int PartsARound = 96;

    private readonly ScenarioMachine _machine;
    private readonly CheckOptions _options;
    private readonly Symmetry? _symmetry;
    private readonly LocalSteps? _local;
    private readonly bool _endsWhenFound;
    private readonly List<SearchPart> _parts = [];
    private readonly Shard[] _shards;
    private readonly int[] _from = new int[Shards];
    private readonly int[] _to = new int[Shards];
    private Violation? _violation;
    private uint? _asked;

    /// <param name="machine">The scenario.</param>
    /// <param name="options">Limits, and how parts are run.</param>
    /// <param name="keepsThreadsApart">Whether threads that do the same are still told apart.</param>
    /// <param name="endsWhenFound">Whether it is over with the first failure, or what a litmus test asks for.</param>
    public Search(
        ScenarioMachine machine, CheckOptions options, bool keepsThreadsApart = false, bool endsWhenFound = false)
    {
        (_machine, _options, _endsWhenFound) = (machine, options, endsWhenFound);
        _local = options.Has(Reductions.Local) ? new(machine) : null;
        _symmetry = keepsThreadsApart ? null : Symmetry.Of(machine);
        _shards = [.. Enumerable.Range(0, Shards).Select(_ => new Shard(machine.Layout.Words))];
    }

    public ScenarioMachine Machine => _machine;

    public Symmetry? Symmetry => _symmetry;

    public long States => _shards.Sum(shard => (long)shard.Count);

    public long Transitions => _parts.Sum(part => part.Transitions);

    public long Bytes => _shards.Sum(shard => shard.Bytes);

    /// <summary>Steps from the start to the last states found.</summary>
    public int Depth { get; private set; }

    /// <summary>States that nobody has gone on from.</summary>
    public long Frontier { get; private set; }

    /// <summary>What fails first, if anything does.</summary>
    public Violation? Violation => _violation;

    /// <summary>The first final state that a litmus test asks for.</summary>
    public uint? Asked => _asked;

    /// <summary>Whether something fails, or is what a litmus test asks for.</summary>
    public bool HasFound => _violation is not null || _asked is not null;

    /// <summary>Which limit stopped it; null when it came to the end.</summary>
    public Budget? Exhausted { get; private set; }

    /// <summary>All distinct outcomes, in the order in which they were found.</summary>
    public KeyTable Outcomes()
    {
        var all = new KeyTable(PropertyChecker.OutcomeLength(_machine.Code));
        foreach (var part in _parts)
        {
            for (int at = 0; at < part.Outcomes.Count; at++)
                all.Add(part.Outcomes[at], out _);
        }

        return all;
    }

    /// <summary>A stored state.</summary>
    public ReadOnlySpan<ulong> StateOf(uint id) => _shards[id % Shards][(int)(id / Shards)];

    /// <summary>From which state one was found; the first state is its own.</summary>
    public uint ParentOf(uint id) => _shards[id % Shards].ParentOf((int)(id / Shards));

    /// <summary>The number of a stored state; null when it was not reached.</summary>
    public uint? Find(ReadOnlySpan<ulong> state)
    {
        ulong hash = StateHash.Of(state);
        int shard = (int)(hash >> ShardShift);
        int at = _shards[shard].Find(state, StateHash.Half(hash));
        return at < 0 ? null : (uint)((at * Shards) + shard);
    }

    /// <summary>All stored states, shard by shard.</summary>
    public IEnumerable<uint> Ids()
    {
        for (int shard = 0; shard < Shards; shard++)
        {
            for (int at = 0; at < _shards[shard].Count; at++)
                yield return (uint)((at * Shards) + shard);
        }
    }

    /// <summary>The position of a state in <see cref="Ids"/>.</summary>
    public int PositionOf(uint id)
    {
        int before = 0;
        for (int shard = 0; shard < id % Shards; shard++)
            before += _shards[shard].Count;
        return before + (int)(id / Shards);
    }

    /// <summary>
    /// What kept it from coming to its end: a number that needs more bits
    /// (<see cref="LayoutOverflowException"/>), a list that needs to be longer
    /// (<see cref="CapacityOverflowException"/>), a condition without a value; null for nothing.
    /// </summary>
    public Exception? Error { get; private set; }

    /// <summary>Searches.</summary>
    public IEnumerable<Portion> Work()
    {
        bool goesOn = Begin();
        while (goesOn && Exhausted is null)
        {
            long known = States;
            foreach (Portion portion in NextLevel())
                yield return portion;
            if (Error is not null)
                yield break;
            Judge();
            goesOn = States > known;
            Depth += goesOn ? 1 : 0;
            goesOn &= !_endsWhenFound || !HasFound;
        }
    }

    /// <summary>Stores the first state; false when it already fails, or does not fit.</summary>
    private bool Begin()
    {
        var first = new ulong[_machine.Layout.Words];
        Fault fault = default;
        try
        {
            fault = new Stepper(_machine).Start(first);
        }
        catch (Exception error) when (error is LayoutOverflowException or CapacityOverflowException)
        {
            Error = error;
            return false;
        }

        if (!fault.IsNone)
            _violation = new(PropertyChecker.PropertyOf(fault.Kind), 0, null, fault);
        _symmetry?.Reduce(first, new ulong[first.Length], new ulong[first.Length]);
        ulong hash = StateHash.Of(first);
        int shard = (int)(hash >> ShardShift);
        _shards[shard].Add(first, StateHash.Half(hash), (uint)shard);
        return fault.IsNone;
    }

    /// <summary>Takes the states found last as the level to go on from.</summary>
    private IEnumerable<Portion> NextLevel()
    {
        long total = 0;
        for (int shard = 0; shard < Shards; shard++)
        {
            (_from[shard], _to[shard]) = (_to[shard], _shards[shard].Count);
            total += _to[shard] - _from[shard];
        }

        long known = States;
        for (long position = 0; position < total && Exhausted is null;)
        {
            Frontier = total - position + States - known;
            int count = (int)Math.Min(PartsARound, (total - position + StatesAPart - 1) / StatesAPart);
            while (_parts.Count < count)
                _parts.Add(new(_machine, _symmetry, _local));
            foreach (Portion portion in Expanding(position, count, total))
                yield return portion;
            Error = _parts.Select(part => part.Error).FirstOrDefault(error => error is not null);
            if (Error is not null)
                yield break;
            if (count == 1)
                HandOver(1);
            else
                yield return new(Shards, shard => HandOver(count, shard));
            position += (long)count * StatesAPart;
            CheckBudget();
        }
    }

    /// <summary>Goes on from the states of a round: all of a part's at once, or a few at a time.</summary>
    private IEnumerable<Portion> Expanding(long position, int count, long total)
    {
        long longest = Math.Min(StatesAPart, total - position);
        for (long piece = 0; piece < longest; piece += _options.StatesAtOnce)
        {
            long from = position + piece;
            int length = (int)Math.Min(_options.StatesAtOnce, StatesAPart - piece);
            yield return new(count, part => ExpandPart(part, from + ((long)part * StatesAPart), length, total));
        }
    }

    /// <summary>What the level has shown.</summary>
    private void Judge()
    {
        // A state that fails was reached with fewer steps than one behind a step that fails.
        _violation ??= _parts.Select(part => part.StateViolation).FirstOrDefault(one => one is not null)
            ?? _parts.Select(part => part.StepViolation).FirstOrDefault(one => one is not null);
        _asked ??= _parts.Select(part => part.Asked).FirstOrDefault(one => one is not null);
    }

    // A level of few states has few finds: not worth a portion for each shard.
    private void HandOver(int count)
    {
        for (int shard = 0; shard < Shards; shard++)
            HandOver(count, shard);
    }

    private void HandOver(int count, int shard)
    {
        for (int part = 0; part < count; part++)
            _parts[part].HandOver(shard, _shards[shard]);
    }

    private void ExpandPart(int part, long position, int count, long total) => _parts[part].Guard(() =>
    {
        long end = Math.Min(position + count, total);
        int shard = 0;
        long before = 0;
        while (position < end)
        {
            int length = _to[shard] - _from[shard];
            if (position >= before + length)
            {
                before += length;
                shard++;
                continue;
            }

            int at = _from[shard] + (int)(position - before);
            _parts[part].Expand(_shards[shard][at], (uint)((at * Shards) + shard));
            position++;
        }
    });

    private void CheckBudget()
    {
        long states = States, bytes = Bytes;
        if (states > _options.StatesMax || states > uint.MaxValue - 1)
            Exhausted = Budget.States;
        else if (bytes > _options.BytesMax)
            Exhausted = Budget.Memory;
        else if (_options.Progress is { } hear && !hear(new(states, Transitions, Depth, Frontier, bytes)))
            Exhausted = Budget.Time;
    }
}
