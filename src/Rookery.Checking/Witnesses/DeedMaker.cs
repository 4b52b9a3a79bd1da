using Rookery.Checking.Compiling;
using Rookery.Checking.Memory;
using Rookery.Checking.Naming;
using Rookery.Checking.Syntax;

namespace Rookery.Checking.Witnesses;

/// <summary>Notes what accesses did.</summary>
/// <param name="code">The scenario.</param>
internal sealed class DeedMaker(ScenarioCode code)
{
    /// <summary>What an access did.</summary>
    /// <param name="request">The access.</param>
    /// <param name="answer">What it answered.</param>
    /// <param name="before">What everything held before.</param>
    /// <param name="thread">Who made it.</param>
    public Deed Of(in Request request, long answer, Picture before, int thread)
    {
        Access access = request.Access;
        if (access.Kind == AccessKind.Fence)
            return new(FenceOf(access.Order));
        string place = code.MemoryAt(request.Place).NameOf(request.Place);
        return access.Kind switch
        {
            AccessKind.Load => LoadOf(request, place, answer, before, thread),
            AccessKind.Store => new(HasBuffers ? DeedKind.StoreBuffered : DeedKind.Store)
            {
                Place = place,
                Value = request.First,
            },
            AccessKind.CompareAndSwap => new(
                answer != 0 ? DeedKind.CompareAndSwap : DeedKind.CompareAndSwapFailed)
            {
                Place = place,
                Value = request.Second,
                Former = request.First,
            },
            AccessKind.Add => new(DeedKind.Add) { Place = place, Value = request.First, Former = answer },
            AccessKind.Swap => new(DeedKind.Swap) { Place = place, Value = request.First, Former = answer },
            AccessKind.Lock => new(DeedKind.Lock) { Place = place },
            _ => new(DeedKind.Unlock) { Place = place },
        };
    }

    private bool HasBuffers => code.Model is MemoryModel.Tso or MemoryModel.Pso;

    private Deed LoadOf(in Request request, string place, long answer, Picture before, int thread)
    {
        var plain = new Deed(DeedKind.Load) { Place = place, Value = answer };

        // A silent read is of memory that only this thread writes; its last write may be part of the same step.
        if (request.Access.IsSilent)
            return plain;
        if (HasBuffers && before.Threads[thread].Buffer.Any(one => one.Place == place))
            return plain with { Kind = DeedKind.LoadOwn };
        if (HasBuffers && OtherWith(before, thread, place) is { } other)
            return plain with { Kind = DeedKind.LoadPast, Holder = other };
        long newest = before.Places[request.Place].Value;
        return code.Model == MemoryModel.Ra && newest != answer
            ? plain with { Kind = DeedKind.LoadOlder, Newest = newest }
            : plain;
    }

    private string? OtherWith(Picture before, int thread, string place)
    {
        for (int other = 0; other < before.Threads.Length; other++)
        {
            if (other != thread && before.Threads[other].Buffer.Any(one => one.Place == place))
                return code.Threads[other].Name;
        }

        return null;
    }

    private static DeedKind FenceOf(AccessOrder order) => order switch
    {
        AccessOrder.Acquire => DeedKind.AcquireFence,
        AccessOrder.Release => DeedKind.ReleaseFence,
        AccessOrder.Full or AccessOrder.Unmarked or AccessOrder.Relaxed => DeedKind.FullFence,
    };
}
