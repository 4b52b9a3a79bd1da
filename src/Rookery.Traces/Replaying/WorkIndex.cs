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

    private readonly int[] _closeSteps;
    private readonly int[] _places;
    private readonly long[] _lengths;
    private readonly int[] _firstAt;
    private readonly long[] _totals;
    private readonly Level[] _levels;

    public WorkIndex(Trace trace, TaskTable tasks)
    {
        (_closeSteps, _places, _lengths) = ClosedStretches(trace, tasks);
        _firstAt = new int[tasks.Count + 1];
        foreach (int place in _places)
            _firstAt[place + 1]++;
        for (int i = 0; i < tasks.Count; i++)
            _firstAt[i + 1] += _firstAt[i];
        _totals = TotalsByPlace(tasks);
        _levels = BuildLevels();
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

    private static (int[] CloseSteps, int[] Places, long[] Lengths) ClosedStretches(Trace trace, TaskTable tasks)
    {
        List<int> closeSteps = [];
        List<int> places = [];
        List<long> lengths = [];
        (int Task, long From)[] working = new (int, long)[tasks.WorkerCount];
        Array.Fill(working, (-1, 0));
        for (int step = 0; step < trace.Count; step++)
        {
            ref readonly TraceEvent item = ref trace[step];
            if (item.Worker >= working.Length)
                continue;
            ref (int Task, long From) open = ref working[item.Worker];
            if (open.Task >= 0)
            {
                closeSteps.Add(step);
                places.Add(tasks.PlaceOf(open.Task));
                lengths.Add(Durations.Between(open.From, item.Time));
            }

            open = (item.Kind == EventKind.Work && tasks.Knows(item.Task) ? item.Task : -1, item.Time);
        }

        return ([.. closeSteps], [.. places], [.. lengths]);
    }

    private static long[] TotalsByPlace(TaskTable tasks)
    {
        long[] totals = new long[tasks.Count + 1];
        for (int task = 0; task < tasks.Count; task++)
            totals[tasks.PlaceOf(task) + 1] = tasks[task].OwnWork;
        for (int i = 0; i < tasks.Count; i++)
            totals[i + 1] = Durations.Sum(totals[i], totals[i + 1]);
        return totals;
    }

    private int RanksBefore(int step)
    {
        int index = Array.BinarySearch(_closeSteps, step);
        return index >= 0 ? index : ~index;
    }

    private Level[] BuildLevels()
    {
        // One digit more than the highest block needs, so that the bound after the last stretch has its own number.
        int digits = BitOperations.Log2((uint)(_places.Length >> BlockBits) + 1) + 1;
        int[] ranks = new int[_places.Length];
        int[] used = new int[_firstAt.Length];
        for (int rank = 0; rank < ranks.Length; rank++)
            ranks[_firstAt[_places[rank]] + used[_places[rank]]++] = rank;
        var levels = new Level[digits];
        int[] other = new int[ranks.Length];
        for (int i = 0; i < digits; i++)
        {
            levels[i] = new Level(ranks, other, BlockBits + digits - 1 - i, _lengths);
            (ranks, other) = (other, ranks);
        }

        return levels;
    }

    /// <summary>One digit of the ranks: where each point goes, and the running sums of lengths after the
    /// split.</summary>
    private sealed class Level
    {
        private readonly ulong[] _isOne;
        private readonly int[] _onesBefore;

        public Level(int[] ranks, int[] split, int digit, long[] lengths)
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
