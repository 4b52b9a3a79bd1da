namespace Rookery.Checking;

/// <summary>What was found of an operation's progress.</summary>
public enum ProgressReasonKind
{
    /// <summary>It has neither loops nor locks, so it ends after a number of steps of its own: wait-free.</summary>
    Bounded,

    /// <summary>Its loops come to an end, whatever the others do: wait-free.</summary>
    LoopsEnd,

    /// <summary>Others can throw it back by getting on themselves: lock-free.</summary>
    ThrownBack,

    /// <summary>It can go round and round while nobody ends anything: obstruction-free.</summary>
    GoesRound,

    /// <summary>Alone it never ends from some state: blocking.</summary>
    Stuck,

    /// <summary>The search ran out of budget: unknown.</summary>
    NotSearched,
}
