using Rookery.Checking.Compiling;
using Rookery.Checking.Naming;
using Rookery.Checking.States;
using Rookery.Checking.Syntax;

namespace Rookery.Checking.Memory;

/// <summary>The slots of <see cref="ViewMemory"/>; -1 where a number can only be 0.</summary>
internal sealed class ViewSlots
{
    private readonly bool _hasAcquire;
    private readonly bool _hasRelease;

    public ViewSlots(ScenarioCode code, StateShape shape, Capacities capacities)
    {
        var accesses = code.Threads.SelectMany(thread => thread.Accesses).ToArray();
        bool hasFull = accesses.Any(one => one.Kind == AccessKind.Fence && one.Order == AccessOrder.Full);
        bool hasAcquireFence = accesses.Any(one => one.Kind == AccessKind.Fence && one.Order == AccessOrder.Acquire);
        bool hasReleaseFence = accesses.Any(one => one.Kind == AccessKind.Fence && one.Order == AccessOrder.Release);
        _hasAcquire = accesses.Any(one => one.Acquires);
        _hasRelease = accesses.Any(one => one.Releases);
        Places = code.PlaceCount;
        Threads = code.Threads.Length;
        IsLock = [.. Enumerable.Range(0, Places).Select(place => code.MemoryAt(place).IsLock)];
        Lengths = [.. Enumerable.Range(0, Places).Select(place => IsLock[place] ? 1 : capacities[place])];
        Count = new int[Places];
        (Value, Joined, View) = (new int[Places][], new int[Places][], new int[Places][][]);
        for (int place = 0; place < Places; place++)
            AddPlace(code, shape, place);
        Current = AddViews(shape, SlotKind.View, isUsed: true);
        Acquire = AddViews(shape, SlotKind.AcquireView, hasFull || hasAcquireFence);
        Release = AddViews(shape, SlotKind.ReleaseView, hasFull || hasReleaseFence);
        Fence = [.. Enumerable.Range(0, Places).Select(place => !hasFull || Lengths[place] < 2
            ? -1 : shape.Add(new(SlotKind.FenceView, First: place), 0))];
        ViewsOf =
        [
            .. Enumerable.Range(0, Places).Select(place => Current.Concat(Acquire).Concat(Release)
                .Concat(View.SelectMany(writes => writes)).Append(Fence).Select(view => view[place])
                .Where(slot => slot >= 0).ToArray()),
        ];
    }

    public int Places { get; }

    public int Threads { get; }

    public bool[] IsLock { get; }

    /// <summary>For each place how many writes can be remembered.</summary>
    public int[] Lengths { get; }

    public int[] Count { get; }

    public int[][] Value { get; }

    public int[][] Joined { get; }

    /// <summary>By place, write, and the place that it is about.</summary>
    public int[][][] View { get; }

    public int[][] Current { get; }

    public int[][] Acquire { get; }

    public int[][] Release { get; }

    public int[] Fence { get; }

    /// <summary>For each place all slots that say how far it has come for somebody.</summary>
    public int[][] ViewsOf { get; }

    private void AddPlace(ScenarioCode code, StateShape shape, int place)
    {
        int length = Lengths[place];
        Count[place] = length < 2 ? -1 : shape.Add(new(SlotKind.MessageCount, First: place), 1);
        (Value[place], Joined[place], View[place]) = (new int[length], new int[length], new int[length][]);
        for (int at = 0; at < length; at++)
        {
            long initial = at == 0 ? code.MemoryAt(place).Initial : 0;
            Value[place][at] = shape.Add(new(SlotKind.MessageValue, First: place, Second: at), initial);
            Joined[place][at] = at == 0 || length < 2
                ? -1 : shape.Add(new(SlotKind.MessageJoined, First: place, Second: at), 0);
            View[place][at] = new int[Places];
            for (int about = 0; about < Places; about++)
            {
                bool isUsed = _hasAcquire && _hasRelease && about != place && Lengths[about] > 1
                    && (length > 1 || IsLock[place]);
                View[place][at][about] = !isUsed ? -1 : shape.Add(
                    new(SlotKind.MessageView, First: place, Second: at, Third: about), 0);
            }
        }
    }

    private int[][] AddViews(StateShape shape, SlotKind kind, bool isUsed) =>
    [
        .. Enumerable.Range(0, Threads).Select(thread => Enumerable.Range(0, Places).Select(place =>
            !isUsed || Lengths[place] < 2 ? -1 : shape.Add(new(kind, thread, place), 0)).ToArray()),
    ];
}
