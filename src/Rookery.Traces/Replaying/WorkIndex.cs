using System.Numerics;

namespace Rookery.Traces.Replaying;

/// <summary>Answers how much work a subtree of tasks has done before a step, in logarithmic time.</summary>
/// <remarks>
/// <para>
/// Each closed work stretch is a point: its task's place in the forest's walk, and its rank in order of closing. The
/// work of a subtree before a step is the sum over a range of places and all ranks below a bound. A wavelet matrix
/// (Claude, Navarro, Ordóñez, "The wavelet matrix", Information Systems 47, 2015) answers that: the points stand in
/// order of place, and for each binary digit of the rank, from the highest, a level splits them into those with a 0 and
/// those with a 1, each half in its old order. Going down with the bound's digits, a 1 means that all zeros of the
/// range lie below the bound.
/// </para>
/// <para>
/// The lowest six digits have no level: the last up to 63 stretches before the bound are looked at one by one. A level
/// costs 8.2 bytes a stretch, so 250,000 stretches (a trace of about a million events) take 27 MB, built when first
/// asked.
/// </para>
/// </remarks>
internal sealed class WorkIndex
{
    private const int BlockBits = 6;

    private const int PartLength = 4096;

    private readonly Trace _trace;
    private readonly TaskTable _tasks;
    private readonly List<int> _closeSteps = [];
    private readonly List<int> _places = [];
    private readonly List<long> _lengths = [];
    private readonly (int Task, long From)[] _working;
    private readonly int[] _firstAt;
    private readonly long[] _totals;
    private Level[] _levels = [];

    private WorkIndex(Trace trace, TaskTable tasks)
    {
        (_trace, _tasks) = (trace, tasks);
        _working = new (int, long)[tasks.WorkerCount];
        Array.Fill(_working, (-1, 0));
        _firstAt = new int[tasks.Count + 1];
        _totals = new long[tasks.Count + 1];
    }

    /// <summary>The index of a trace, in one go.</summary>
    public static WorkIndex Of(Trace trace, TaskTable tasks)
    {
        var index = new WorkIndex(trace, tasks);
        foreach (int _ in index.Parts())
        {
        }

        return index;
    }

    /// <summary>An index that is not ready before all its <see cref="Parts"/> are done.</summary>
    public static WorkIndex Begun(Trace trace, TaskTable tasks) => new(trace, tasks);

    /// <summary>All the work in parts, each with about how many events it was worth.</summary>
    public IEnumerable<int> Parts()
    {
        for (int step = 0; step < _trace.Count;)
        {
            int length = ReadStretches(step);
            step += length;
            yield return length;
        }

        foreach (int place in _places)
            _firstAt[place + 1]++;
        for (int i = 0; i < _tasks.Count; i++)
            _firstAt[i + 1] += _firstAt[i];
        yield return _places.Count;
        AddTotals();
        yield return _tasks.Count;
        foreach (int done in LevelParts())
            yield return done;
    }

    /// <summary>The work, done and to be done, of the tasks at a range of places.</summary>
    public long TotalOf(int fromPlace, int toPlace) => Durations.Between(_totals[fromPlace], _totals[toPlace]);

    /// <summary>The length of the stretches that were closed by one of the first events, of tasks at a range of
    /// places.</summary>
    public long DoneBefore(int step, int fromPlace, int toPlace)
    {
        int ranks = RanksBefore(step);
        int from = _firstAt[fromPlace];
        int to = _firstAt[toPlace];
        long sum = 0;
        for (int rank = ranks >> BlockBits << BlockBits; rank < ranks; rank++)
        {
            if (_places[rank] >= fromPlace && _places[rank] < toPlace)
                sum = Durations.Sum(sum, _lengths[rank]);
        }

        int bound = ranks >> BlockBits;
        for (int i = 0; i < _levels.Length && from < to; i++)
        {
            Level level = _levels[i];
            int zerosFrom = level.ZerosBefore(from);
            int zerosTo = level.ZerosBefore(to);
            if (((bound >> (_levels.Length - 1 - i)) & 1) == 0)
            {
                (from, to) = (zerosFrom, zerosTo);
                continue;
            }

            sum = Durations.Sum(sum, Durations.Between(level.Sums[zerosFrom], level.Sums[zerosTo]));
            from += level.Zeros - zerosFrom;
            to += level.Zeros - zerosTo;
        }

        return sum;
    }

    private int ReadStretches(int step)
    {
        ReadOnlySpan<TraceEvent> events = _trace.Portion(step, PartLength);
        foreach (ref readonly TraceEvent item in events)
        {
            int at = step++;
            if (item.Worker >= _working.Length)
                continue;
            ref (int Task, long From) open = ref _working[item.Worker];
            if (open.Task >= 0)
            {
                _closeSteps.Add(at);
                _places.Add(_tasks.PlaceOf(open.Task));
                _lengths.Add(Durations.Between(open.From, item.Time));
            }

            open = (item.Kind == EventKind.Work && _tasks.Knows(item.Task) ? item.Task : -1, item.Time);
        }

        return events.Length;
    }

    private void AddTotals()
    {
        for (int task = 0; task < _tasks.Count; task++)
            _totals[_tasks.PlaceOf(task) + 1] = _tasks[task].OwnWork;
        for (int i = 0; i < _tasks.Count; i++)
            _totals[i + 1] = Durations.Sum(_totals[i], _totals[i + 1]);
    }

    private int RanksBefore(int step)
    {
        int index = _closeSteps.BinarySearch(step);
        return index >= 0 ? index : ~index;
    }

    private IEnumerable<int> LevelParts()
    {
        // One digit more than the highest block needs, so that the bound after the last stretch has its own number.
        int digits = BitOperations.Log2((uint)(_places.Count >> BlockBits) + 1) + 1;
        int[] ranks = new int[_places.Count];
        int[] used = new int[_firstAt.Length];
        for (int rank = 0; rank < ranks.Length; rank++)
            ranks[_firstAt[_places[rank]] + used[_places[rank]]++] = rank;
        yield return ranks.Length;
        var levels = new Level[digits];
        int[] other = new int[ranks.Length];
        for (int i = 0; i < digits; i++)
        {
            levels[i] = new Level(ranks, other, BlockBits + digits - 1 - i);
            yield return ranks.Length;
            levels[i].AddSums(other, _lengths);
            yield return ranks.Length;
            (ranks, other) = (other, ranks);
        }

        _levels = levels;
    }

    /// <summary>One digit of the ranks: where each point goes, and the running sums of lengths after the
    /// split.</summary>
    private sealed class Level
    {
        private readonly ulong[] _isOne;
        private readonly int[] _onesBefore;

        public Level(int[] ranks, int[] split, int digit)
        {
            _isOne = new ulong[(ranks.Length >> 6) + 1];
            _onesBefore = new int[_isOne.Length];
            int ones = 0;
            for (int i = 0; i < ranks.Length; i++)
            {
                if ((i & 63) == 0)
                    _onesBefore[i >> 6] = ones;
                if (((ranks[i] >> digit) & 1) == 0)
                    continue;
                _isOne[i >> 6] |= 1UL << (i & 63);
                ones++;
            }

            if ((ranks.Length & 63) == 0)
                _onesBefore[^1] = ones;
            Zeros = ranks.Length - ones;
            int zero = 0;
            int one = Zeros;
            foreach (int rank in ranks)
                split[((rank >> digit) & 1) == 0 ? zero++ : one++] = rank;
            Sums = new long[ranks.Length + 1];
        }

        public void AddSums(int[] split, List<long> lengths)
        {
            for (int i = 0; i < split.Length; i++)
                Sums[i + 1] = Durations.Sum(Sums[i], lengths[split[i]]);
        }

        /// <summary>Number of points with a 0 in this digit: they stand first after the split.</summary>
        public int Zeros { get; }

        /// <summary>Sums of the lengths of the first points after the split.</summary>
        public long[] Sums { get; }

        public int ZerosBefore(int position)
        {
            ulong below = _isOne[position >> 6] & ((1UL << (position & 63)) - 1);
            return position - _onesBefore[position >> 6] - BitOperations.PopCount(below);
        }
    }
}
