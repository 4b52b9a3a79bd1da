namespace Rookery.Traces;

/// <summary>Proves that a trace is lawful, or says where it is not.</summary>
/// <remarks>
/// The audit trusts nothing but docs/trace.md: from the events alone it follows every task, stack and queue, and judges
/// each event by the rules of <see cref="AuditRules"/>. It shares no code with any maker of traces, with replay or with
/// the measures. After a finding it believes the event and goes on. Time grows with the number of events (a
/// leapfrogging steal also looks through the waiting task's children), memory with the tasks that are alive and three
/// bits for each that is not.
/// </remarks>
public static class Audit
{
    /// <summary>How many findings are listed unless asked otherwise.</summary>
    public const int FindingsByDefault = 100;

    /// <summary>Judges a trace.</summary>
    /// <param name="trace">The trace, lawful or not.</param>
    /// <param name="findingsMax">How many findings are listed at the most, at least 0; all are counted.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="findingsMax"/> is below 0.</exception>
    public static AuditReport Of(Trace trace, int findingsMax = FindingsByDefault)
    {
        var audit = new AuditInPortions(trace, findingsMax);
        audit.Advance(trace.Count);
        return audit.Report();
    }
}
