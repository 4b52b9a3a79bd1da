namespace Rookery.Checking;

/// <summary>What a check is doing.</summary>
public enum CheckPhase
{
    /// <summary>It looks around to learn how large numbers become.</summary>
    Learning,

    /// <summary>It looks at every state.</summary>
    Searching,

    /// <summary>It looks for what can repeat, to classify operations by their progress.</summary>
    Classifying,

    /// <summary>There is a result.</summary>
    Done,
}
