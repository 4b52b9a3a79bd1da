namespace Rookery.Pool;

/// <summary>Every worker waits at a join for a task that is still queued, and none may run it.</summary>
/// <remarks>Happens only under <see cref="AtJoin.Wait"/>. The message says how many workers wait.</remarks>
public sealed class PoolStarvedException : InvalidOperationException
{
    internal PoolStarvedException(string message)
        : base(message)
    {
    }
}
