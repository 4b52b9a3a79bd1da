namespace Rookery.Programs;

/// <summary>What a task does next, as a scheduler sees it.</summary>
public enum ActionKind : byte
{
    /// <summary>Computes for some units of time.</summary>
    Work,

    /// <summary>Waits for something outside the processor for some units of time.</summary>
    Block,

    /// <summary>Makes a child that may run in parallel.</summary>
    Fork,

    /// <summary>Makes a child that runs in place, before the caller goes on.</summary>
    Call,

    /// <summary>Waits for all children that it has forked so far.</summary>
    Join,

    /// <summary>Is done.</summary>
    End,
}
