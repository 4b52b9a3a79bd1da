namespace Rookery.Pool.Workers;

/// <summary>Where a test's scheduler takes the place of the operating system's: threads, and how they wait.</summary>
/// <remarks>
/// A pool that is used has none, and asks only where it rests: off the fork path. Nothing that holds a lock waits here,
/// so the pool's locks need no seam.
/// </remarks>
internal interface IPoolSeam
{
    /// <summary>Whether a worker falls asleep without its last look, which a test has to find.</summary>
    bool LeavesOutLastLook { get; }

    /// <summary>Makes a thread.</summary>
    Thread Create(ThreadStart body, int stackBytes);

    /// <summary>Starts it.</summary>
    void Start(Thread thread);

    /// <summary>Waits for its end.</summary>
    void Join(Thread thread);

    /// <summary>Another thread may go on here.</summary>
    void Step();

    /// <summary>Waits until something is so; asked by any thread.</summary>
    void Until(Func<bool> condition);

    /// <summary>Waits for a signal and takes it.</summary>
    void Wait(AutoResetEvent signal);

    /// <summary>Gives a signal, which waits for the one that takes it.</summary>
    void Set(AutoResetEvent signal);
}
