namespace Rookery.Traces.Replaying;

/// <summary>Makes a replay in portions, for callers that must not be held up: a page has one thread only.</summary>
/// <remarks>
/// What is built is what <c>new Replay(trace)</c> builds, and beforehand also what that makes when first asked: the
/// index of work (<see cref="Stage.RemainingWork"/>), <see cref="Replay.LargestQueuedWork"/>, running counts, and the
/// lists of steps (<see cref="Replay.HistoryOf"/>, <see cref="Replay.NextOf"/>). No portion is much
/// longer than asked for, except that a pass over all tasks or over all stretches of work is one piece: about as long
/// as reading a quarter of the trace. Mutable, for one thread, used once.
/// </remarks>
/// <example>
/// <code>
/// var builder = new ReplayBuilder(trace);
/// while (!builder.Advance(20_000))
///     await Task.Yield();       // somebody may have pressed a key
/// Replay replay = builder.Build();
/// </code>
/// </example>
public sealed class ReplayBuilder
{
    // Seven passes over the events; and about half as much again for tasks and stretches of work.
    private const int PassesExpected = 11;

    private readonly Trace _trace;
    private readonly IEnumerator<int> _parts;
    private long _done;
    private Replay? _replay;
    private bool _isDone;

    /// <summary>Begins with nothing done.</summary>
    /// <param name="trace">What is to be replayed.</param>
    public ReplayBuilder(Trace trace)
    {
        _trace = trace;
        _parts = Parts().GetEnumerator();
    }

    /// <summary>About which share is done, 0 to 1; 1 only when all is.</summary>
    public double Progress =>
        _isDone ? 1 : Math.Min(0.99, _done / Math.Max(1.0, (double)PassesExpected * _trace.Count));

    /// <summary>Goes on for about as long as reading so many events takes.</summary>
    /// <param name="events">At least 1.</param>
    /// <returns>Whether all is done.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is nothing to do.</exception>
    public bool Advance(int events)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(events, 1);
        long until = _done + events;
        while (!_isDone && _done < until)
        {
            if (_parts.MoveNext())
                _done += _parts.Current;
            else
                _isDone = true;
        }

        return _isDone;
    }

    /// <summary>
    /// The replay as soon as it shows every step; null before. What is left are the lists of steps, about a fifth of
    /// the work: whoever asks for one before it is made has it made in one go.
    /// </summary>
    public Replay? Usable => _replay;

    /// <summary>The replay; does what is left first. A second call gives the same.</summary>
    public Replay Build()
    {
        while (!_isDone)
            Advance(int.MaxValue);
        return _replay!;
    }

    private IEnumerable<int> Parts()
    {
        var tasks = new TaskTableBuilder(_trace);
        foreach (int done in tasks.Parts())
            yield return done;
        var replay = Replay.Begun(_trace, tasks.Build());
        foreach (int done in replay.Parts())
            yield return done;
        _replay = replay;
        foreach (int done in replay.ListParts())
            yield return done;
    }
}
