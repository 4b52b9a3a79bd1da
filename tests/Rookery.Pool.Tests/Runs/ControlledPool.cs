using System.Collections.Concurrent;
using Microsoft.Coyote.Runtime;
using Rookery.Pool.Workers;
using Controlled = Microsoft.Coyote.Rewriting.Types.Threading.Thread;

namespace Rookery.Pool.Tests.Runs;

/// <summary>Puts a pool's threads, sleeps and waits under the testing library's scheduler.</summary>
/// <param name="mistake">What is wrong, for a test that has to find it.</param>
internal sealed class ControlledPool(SleepMistake mistake = SleepMistake.None) : IPoolSeam
{
    private readonly ConcurrentDictionary<AutoResetEvent, bool> _signals = new();
    private readonly ConcurrentDictionary<AutoResetEvent, bool> _waiting = new();

    /// <summary>How often a worker slept.</summary>
    public int Sleeps { get; private set; }

    /// <inheritdoc/>
    public bool LeavesOutLastLook => mistake == SleepMistake.NoLastLook;

    /// <inheritdoc/>
    public Thread Create(ThreadStart body, int stackBytes) => Controlled.Create(body, stackBytes);

    /// <inheritdoc/>
    public void Start(Thread thread) => Controlled.Start(thread);

    /// <inheritdoc/>
    public void Join(Thread thread) => Controlled.Join(thread);

    /// <inheritdoc/>
    public void Step() => SchedulingPoint.Interleave();

    /// <inheritdoc/>
    public void Until(Func<bool> condition) => Operation.PauseUntil(condition);

    /// <inheritdoc/>
    public void Wait(AutoResetEvent signal)
    {
        SchedulingPoint.Interleave();
        Sleeps++;
        _waiting[signal] = true;
        Operation.PauseUntil(() => _signals.GetValueOrDefault(signal));
        _waiting[signal] = false;
        _signals[signal] = false;
    }

    /// <inheritdoc/>
    public void Set(AutoResetEvent signal)
    {
        if (mistake != SleepMistake.SignalIsNotKept || _waiting.GetValueOrDefault(signal))
            _signals[signal] = true;
    }
}
