namespace Rookery.Traces.Measuring;

/// <summary>What the measures need of a worker.</summary>
internal struct MeasuredWorker
{
    public bool HasAppeared;
    public EventKind LastKind;
    public long LastTime;
    public int LastTask;
    public long AsleepSince;
    public bool IsAsleep;
    public bool IsIdle;
    public int QueueLength;
    public int StackDepth;

    /// <summary>
    /// The task of the last strand that it executed, -1 for none, and whether that strand was the task's last.
    /// </summary>
    public int StrandTask;
    public bool StrandEnded;
}
