using Rookery.Traces.Auditing;

namespace Rookery.Traces;

/// <summary>The same as <see cref="Audit"/>, some events at a time: for a page whose one thread must answer meanwhile.
/// </summary>
/// <remarks>Mutable, for one thread; used once.</remarks>
/// <example>
/// <code>
/// var audit = new AuditInPortions(trace);
/// while (!audit.Advance(2_000))
///     await pause();
/// AuditReport report = audit.Report();
/// </code>
/// </example>
public sealed class AuditInPortions
{
    private readonly Trace _trace;
    private readonly AuditState _state;
    private readonly AuditRun _run;
    private int _step;

    /// <summary>Begins.</summary>
    /// <param name="trace">The trace, lawful or not.</param>
    /// <param name="findingsMax">How many findings are listed at the most, at least 0; all are counted.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="findingsMax"/> is below 0.</exception>
    public AuditInPortions(Trace trace, int findingsMax = Audit.FindingsByDefault)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(findingsMax);
        _trace = trace;
        _state = new AuditState(trace, new FindingList(findingsMax));
        _run = new AuditRun(_state);
    }

    /// <summary>Number of events judged so far.</summary>
    public int Done => _step;

    /// <summary>Judges the next events.</summary>
    /// <param name="count">How many at the most, at least 0.</param>
    /// <returns>Whether all are judged.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="count"/> is below 0.</exception>
    public bool Advance(int count)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        int end = (int)Math.Min(_trace.Count, (long)_step + count);
        for (; _step < end; _step++)
        {
            _state.MoveTo(_step, _trace[_step]);
            _run.Judge();
        }

        return _step == _trace.Count;
    }

    /// <summary>Judges the end, and sums up.</summary>
    /// <exception cref="InvalidOperationException">Some events have not been judged.</exception>
    public AuditReport Report() => _step == _trace.Count
        ? _run.Report(_trace)
        : throw new InvalidOperationException("The audit is not at the end of the trace.");
}
