using Rookery.Checking.Compiling;
using Rookery.Checking.Memory;
using Rookery.Checking.Naming;
using Rookery.Checking.Syntax;
using static System.FormattableString;

namespace Rookery.Checking.Witnesses;

/// <summary>Says accesses in words.</summary>
/// <param name="code">The scenario.</param>
internal sealed class Sentences(ScenarioCode code)
{
    /// <summary>What an access did, without who made it: <c>reads top: 1</c>.</summary>
    /// <param name="request">The access.</param>
    /// <param name="answer">What it answered.</param>
    /// <param name="before">What everything held before.</param>
    /// <param name="thread">Who made it.</param>
    public string Of(in Request request, long answer, Picture before, int thread)
    {
        Access access = request.Access;
        if (access.Kind == AccessKind.Fence)
            return FenceText(access.Order);
        string place = NameOf(request.Place);
        return access.Kind switch
        {
            AccessKind.Load => LoadText(request, place, answer, before, thread),
            AccessKind.Store => HasBuffers
                ? Invariant($"puts {place} = {request.First} into its buffer")
                : Invariant($"writes {place} = {request.First}"),
            AccessKind.CompareAndSwap when answer != 0 =>
                Invariant($"finds {request.First} in {place} and swaps in {request.Second}"),
            AccessKind.CompareAndSwap =>
                Invariant($"does not find {request.First} in {place}, so its swap fails"),
            AccessKind.Add => Invariant($"adds {request.First} to {place}, which was {answer}"),
            AccessKind.Swap => Invariant($"swaps {request.First} into {place}, which was {answer}"),
            AccessKind.Lock => $"takes the lock {place}",
            _ => $"gives the lock {place} back",
        };
    }

    /// <summary>The same in a few signs.</summary>
    public string ShortOf(in Request request, long answer)
    {
        Access access = request.Access;
        string place = request.Place < 0 ? "" : NameOf(request.Place);
        return access.Kind switch
        {
            AccessKind.Load => Invariant($"{place}: {answer}"),
            AccessKind.Store => Invariant($"{place} = {request.First}"),
            AccessKind.CompareAndSwap => Invariant(
                $"{place} {request.First}→{request.Second} {(answer != 0 ? "yes" : "no")}"),
            AccessKind.Add => Invariant($"{place} + {request.First}"),
            AccessKind.Swap => Invariant($"{place} ⇄ {request.First}"),
            AccessKind.Lock => $"lock {place}",
            AccessKind.Unlock => $"unlock {place}",
            AccessKind.Fence => "fence",
        };
    }

    private bool HasBuffers => code.Model is MemoryModel.Tso or MemoryModel.Pso;

    private string NameOf(int place) => code.MemoryAt(place).NameOf(place);

    private string LoadText(in Request request, string place, long answer, Picture before, int thread)
    {
        bool isSilent = request.Access.IsSilent;
        bool isOwn = HasBuffers && before.Threads[thread].Buffer.Any(one => one.Place == place);

        // A silent read is of memory that only this thread writes; its last write may be part of the same step.
        if (isSilent)
            return Invariant($"reads {place} = {answer}");
        if (isOwn)
            return Invariant($"reads {place} = {answer} from its own buffer");
        if (HasBuffers && OtherWith(before, thread, place) is { } other)
        {
            return Invariant($"reads {place} = {answer} from memory, ")
                + $"where the write that waits in the buffer of {other} has not arrived";
        }

        long newest = before.Places[request.Place].Value;
        return code.Model == MemoryModel.Ra && newest != answer
            ? Invariant($"reads an older {place} = {answer}, though {newest} has been written")
            : Invariant($"reads {place} = {answer}");
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

    private static string FenceText(AccessOrder order) => order switch
    {
        AccessOrder.Acquire => "passes an acquire fence",
        AccessOrder.Release => "passes a release fence",
        AccessOrder.Full or AccessOrder.Unmarked or AccessOrder.Relaxed => "passes the full fence",
    };
}
