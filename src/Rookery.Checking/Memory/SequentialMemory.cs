using Rookery.Checking.Compiling;
using Rookery.Checking.Naming;
using Rookery.Checking.States;

namespace Rookery.Checking.Memory;

/// <summary>Sequential consistency (Lamport 1979): one memory, each access happens at once and for everybody.</summary>
/// <remarks>Leaves out all that real processors and compilers do to be fast.</remarks>
internal sealed class SequentialMemory : MemoryMachine
{
    private readonly int[] _places;

    public SequentialMemory(ScenarioCode code, StateShape shape) => _places = AddPlaces(code, shape);

    /// <summary>A slot for each place.</summary>
    public static int[] AddPlaces(ScenarioCode code, StateShape shape) =>
    [
        .. Enumerable.Range(0, code.PlaceCount).Select(place => shape.Add(
            new(SlotKind.Place, First: place), code.MemoryAt(place).Initial)),
    ];

    /// <inheritdoc/>
    public override int Ways(ReadOnlySpan<ulong> state, int thread, in Request request) =>
        request.Access.Kind == AccessKind.Lock && Slots[_places[request.Place]].Get(state) != 0 ? 0 : 1;

    /// <inheritdoc/>
    public override long Perform(Span<ulong> state, int thread, in Request request, int way)
    {
        if (request.Access.Kind == AccessKind.Fence)
            return 0;
        ref readonly Slot slot = ref Slots[_places[request.Place]];
        return PerformAt(state, slot, request);
    }

    /// <summary>Makes an access on what a place holds.</summary>
    public static long PerformAt(Span<ulong> state, in Slot slot, in Request request)
    {
        switch (request.Access.Kind)
        {
            case AccessKind.Load:
                return slot.Get(state);
            case AccessKind.Store:
                slot.Set(state, request.First);
                return 0;
            case AccessKind.Lock:
                slot.Set(state, 1);
                return 0;
            case AccessKind.Unlock:
                slot.Set(state, 0);
                return 0;
            default:
                long old = slot.Get(state);
                bool isWritten = request.TryUpdate(old, out long written);
                if (isWritten)
                    slot.Set(state, written);
                return request.Answer(old, isWritten);
        }
    }

    /// <inheritdoc/>
    public override long Final(ReadOnlySpan<ulong> state, int place) => Slots[_places[place]].Get(state);
}
