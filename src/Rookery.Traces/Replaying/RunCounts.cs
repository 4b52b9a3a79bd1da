namespace Rookery.Traces.Replaying;

/// <summary>How much has happened in the first events of a run: running totals for "so far".</summary>
/// <remarks>At the end they are the measures of the same names.</remarks>
public readonly record struct RunCounts
{
    /// <summary>Tasks that have begun.</summary>
    public long TasksBegun { get; init; }

    /// <summary>Tasks that have ended.</summary>
    public long TasksEnded { get; init; }

    /// <summary>Forks.</summary>
    public long Forks { get; init; }

    /// <summary>Successful steals; one may move several tasks.</summary>
    public long Steals { get; init; }

    /// <summary>Tasks and continuations moved by steals.</summary>
    public long StolenTasks { get; init; }

    /// <summary>Looks at a victim.</summary>
    public long Probes { get; init; }

    /// <summary>Looks that saw nothing.</summary>
    public long EmptyProbes { get; init; }

    /// <summary>Races lost, by thieves and by owners.</summary>
    public long LostRaces { get; init; }

    /// <summary>Times that a worker went to sleep.</summary>
    public long Sleeps { get; init; }

    /// <summary>Times that a worker was woken.</summary>
    public long Wakes { get; init; }

    /// <summary>Work done, in the trace's unit; stretches in progress count for as long as they have lasted.</summary>
    public long Work { get; init; }
}
