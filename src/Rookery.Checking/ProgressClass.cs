namespace Rookery.Checking;

/// <summary>How far other threads can hold an operation up, within one scenario.</summary>
public enum ProgressClass
{
    /// <summary>It ends after a bounded number of its own steps, whatever the others do.</summary>
    WaitFree,

    /// <summary>Others can hold it up again and again, but only by ending operations of their own.</summary>
    LockFree,

    /// <summary>It ends when it runs alone, but threads can hold one another up for ever.</summary>
    ObstructionFree,

    /// <summary>It can come to wait for another thread: alone it never ends.</summary>
    Blocking,

    /// <summary>The search for the answer ran out of budget.</summary>
    Unknown,
}
