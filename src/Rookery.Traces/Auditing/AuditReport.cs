using System.Collections.Immutable;

namespace Rookery.Traces;

/// <summary>What the audit found out about a trace. Immutable.</summary>
public sealed record AuditReport
{
    /// <summary>Whether the trace breaks no rule.</summary>
    public bool IsLawful => FindingCount == 0;

    /// <summary>The first findings, in order of steps; as many as were asked for.</summary>
    public required ImmutableArray<AuditFinding> Findings { get; init; }

    /// <summary>Number of findings, those included that are not listed.</summary>
    public required long FindingCount { get; init; }

    /// <summary>Number of findings by rule, in order of codes; rules that are kept do not appear.</summary>
    public required ImmutableArray<KeyValuePair<AuditRule, long>> CountsByRule { get; init; }

    /// <summary>The laws about whole runs, each with its numbers.</summary>
    public required ImmutableArray<AuditLaw> Laws { get; init; }

    /// <summary>Number of events.</summary>
    public required int Events { get; init; }

    /// <summary>Number of tasks that begin.</summary>
    public required int Tasks { get; init; }

    /// <summary>Work <c>T1</c> as the trace has it: the sum of all stretches of work, in units of time.</summary>
    public required Int128 Work { get; init; }

    /// <summary>
    /// Span <c>Tinf</c> as the trace has it: the longest chain of stretches of work and blocking, in units of time.
    /// </summary>
    public required long Span { get; init; }

    /// <summary>Makespan <c>Tp</c>: from the first event to the last, in units of time.</summary>
    public required long Makespan { get; init; }
}
