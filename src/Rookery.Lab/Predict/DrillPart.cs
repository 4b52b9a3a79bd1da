namespace Rookery.Lab.Predict;

/// <summary>One part of what is asked about an event.</summary>
internal enum DrillPart : byte
{
    /// <summary>Which worker acts.</summary>
    Worker,

    /// <summary>What it does.</summary>
    Kind,

    /// <summary>At whose deque.</summary>
    Victim,

    /// <summary>At which end of a queue.</summary>
    End,

    /// <summary>Which task acts or is moved.</summary>
    Task,
}
