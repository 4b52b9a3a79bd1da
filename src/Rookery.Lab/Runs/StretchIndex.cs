using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Lab.Runs;

/// <summary>What each worker did when, and how long it did each kind of thing up to any time: for timelines of any
/// length.
/// </summary>
/// <remarks>
/// Events lie worker by worker, in their order, with the sums of all time before them; so the share of any piece of
/// time is two searches and a subtraction, exact, whatever lies within. Made in portions: a page has one thread.
/// </remarks>
internal sealed class StretchIndex
{
    /// <summary>Kinds of stretch that are told apart: see <see cref="LaneOf"/>.</summary>
    public const int Lanes = 4;

    private readonly Trace _trace;
    private readonly int[] _starts;
    private readonly int[] _next;
    private readonly int[] _steps;
    private readonly long[] _sums;
    private readonly long[] _times;
    private readonly List<int> _steals = [];
    private int _read;

    /// <summary>Prepares the index of a trace: time in proportion to its length, but a short one.</summary>
    /// <param name="trace">The trace.</param>
    /// <param name="workers">How many workers appear in it.</param>
    public StretchIndex(Trace trace, int workers)
    {
        _trace = trace;
        Workers = workers;
        _starts = new int[workers + 1];
        for (int chunk = 0; chunk < trace.ChunkCount; chunk++)
        {
            foreach (ref readonly TraceEvent item in trace.Chunk(chunk))
            {
                if (item.Worker < workers)
                    _starts[item.Worker + 1]++;
            }
        }

        for (int worker = 0; worker < workers; worker++)
            _starts[worker + 1] += _starts[worker];
        _next = _starts[..workers];
        _steps = new int[_starts[workers]];
        _sums = new long[(long)_starts[workers] * Lanes];
        _times = new long[_starts[workers]];
    }

    /// <summary>How many workers there are.</summary>
    public int Workers { get; }

    /// <summary>The steps of all steals that were read.</summary>
    public IReadOnlyList<int> Steals => _steals;

    /// <summary>Whether all events have been read.</summary>
    public bool IsDone => _read == _trace.Count;

    /// <summary>
    /// Which lane a stretch belongs to: 0 computing, 1 scheduling, 2 searching, 3 asleep, blocked or off.
    /// </summary>
    public static int LaneOf(Stretch stretch) => stretch switch
    {
        Stretch.Working => 0,
        Stretch.Scheduling => 1,
        Stretch.Searching => 2,
        Stretch.Asleep or Stretch.Blocked or Stretch.Off => 3,
    };

    /// <summary>Reads on.</summary>
    /// <param name="events">The most events to be read.</param>
    public void Advance(int events)
    {
        int end = (int)Math.Min(_trace.Count, (long)_read + events);
        for (; _read < end; _read++)
        {
            ref readonly TraceEvent item = ref _trace[_read];
            if (item.Kind == EventKind.Steal)
                _steals.Add(_read);
            if (item.Worker >= Workers)
                continue;
            int place = _next[item.Worker]++;
            _steps[place] = _read;
            _times[place] = item.Time;
            if (place == _starts[item.Worker])
                continue;
            ref readonly TraceEvent before = ref _trace[_steps[place - 1]];
            for (int lane = 0; lane < Lanes; lane++)
                _sums[(place * Lanes) + lane] = _sums[((place - 1) * Lanes) + lane];
            _sums[(place * Lanes) + LaneOf(Stretches.After(before.Kind))] += item.Time - before.Time;
        }
    }

    /// <summary>Events of a worker that lie within a piece of time, and the one before, whose stretch reaches into it.
    /// </summary>
    /// <returns>Places for <see cref="StepAt"/>; the second is not included.</returns>
    public (int First, int End) Within(int worker, double from, double to)
    {
        int first = Math.Max(_starts[worker], PlaceAfter(worker, from) - 1);
        return (first, PlaceAfter(worker, to));
    }

    /// <summary>The step of the event at a place.</summary>
    public int StepAt(int place) => _steps[place];

    /// <summary>How long a worker had spent in each lane by a time.</summary>
    public void SumsAt(int worker, double time, Span<double> sums) =>
        SumsAt(worker, time, sums, _starts[worker], _starts[worker + 1]);

    /// <summary>The same for times that grow from call to call: looks on from where the last was found.</summary>
    /// <param name="worker">The worker.</param>
    /// <param name="time">No earlier than at the last call.</param>
    /// <param name="sums">Gets the sums.</param>
    /// <param name="from">What the last call gave; the first place of <see cref="Within"/> at first.</param>
    /// <returns>Where to look on.</returns>
    public int SumsOn(int worker, double time, Span<double> sums, int from)
    {
        int end = _starts[worker + 1];
        int stride = 1;
        int to = from;
        while (to < end && _times[to] <= time)
        {
            from = to;
            to = Math.Min(end, to + stride);
            stride *= 2;
        }

        return SumsAt(worker, time, sums, from, to);
    }

    // Searches between two places: all before the first are not after the time, all from the second on are.
    private int SumsAt(int worker, double time, Span<double> sums, int from, int to)
    {
        sums.Clear();
        int place = PlaceAfter(time, from, to) - 1;
        if (place < _starts[worker])
            return _starts[worker];
        for (int lane = 0; lane < Lanes; lane++)
            sums[lane] = _sums[(place * Lanes) + lane];
        ref readonly TraceEvent last = ref _trace[_steps[place]];
        sums[LaneOf(Stretches.After(last.Kind))] += time - last.Time;
        return place;
    }

    // The place of the first event of a worker after a time.
    private int PlaceAfter(int worker, double time) => PlaceAfter(time, _starts[worker], _starts[worker + 1]);

    private int PlaceAfter(double time, int low, int high)
    {
        while (low < high)
        {
            int middle = low + ((high - low) / 2);
            if (_times[middle] <= time)
                low = middle + 1;
            else
                high = middle;
        }

        return low;
    }
}
