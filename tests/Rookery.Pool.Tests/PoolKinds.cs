namespace Rookery.Pool.Tests;

/// <summary>The pools that every program is run on: each queue, deque, fence and policy at least once.</summary>
internal static class PoolKinds
{
    /// <summary>Names for theories; <see cref="Options"/> makes the pool's options.</summary>
    public static TheoryData<string> Names => [.. All.Keys];

    private static Dictionary<string, PoolOptions> All { get; } = new()
    {
        ["one worker"] = new() { Workers = 1 },
        ["two workers"] = new() { Workers = 2 },
        ["seven workers"] = new() { Workers = 7 },
        ["fence in take"] = new() { Workers = 3, Fence = FencePlacement.Owner },
        ["thief lock"] = new() { Workers = 3, Deque = DequeKind.ThiefLock },
        ["one lock"] = new() { Workers = 3, Deque = DequeKind.OneLock },
        ["one lock, newest"] = new() { Workers = 3, Deque = DequeKind.OneLock, ThiefTakes = ThiefTakes.Newest },
        ["one lock, owner oldest"] = new() { Workers = 3, Deque = DequeKind.OneLock, OwnerTakes = OwnerTakes.Oldest },
        ["shared"] = new() { Workers = 3, Queues = Queues.Shared },
        ["half"] = new() { Workers = 3, Amount = StealAmount.Half },
        ["leapfrog"] = new() { Workers = 3, AtJoin = AtJoin.Leapfrog },
        ["wait"] = new() { Workers = 3, AtJoin = AtJoin.Wait },
        ["spin"] = new() { Workers = 2, WhenIdle = WhenIdle.Spin },
        ["back-off"] = new() { Workers = 3, WhenIdle = WhenIdle.BackOff },
        ["sleepy"] = new() { Workers = 4, Patience = 1 },
        ["sleepy, wake all"] = new() { Workers = 4, Patience = 1, Wake = WakePolicy.All },
        ["round-robin"] = new() { Workers = 4, Victim = VictimChoice.RoundRobin },
        ["lowest"] = new() { Workers = 4, Victim = VictimChoice.Lowest },
        ["nearest"] = new() { Workers = 4, Victim = VictimChoice.Nearest },
        ["last success"] = new() { Workers = 4, Victim = VictimChoice.LastSuccess },
        ["fullest"] = new() { Workers = 4, Victim = VictimChoice.Fullest },
        ["recording"] = new() { Workers = 3, RecordingCapacity = 1 << 20 },
    };

    public static PoolOptions Options(string name) => All[name];
}
