using Rookery.Checking.Compiling;
using Rookery.Checking.Memory;
using Rookery.Checking.Naming;

namespace Rookery.Checking.Exploring;

/// <summary>Finds steps that no other thread can tell from here on: one of them stands for all that are possible.
/// </summary>
/// <remarks>
/// An ample set of one step (E. Clarke, O. Grumberg, D. Peled, "Model Checking", 1999, chapter 10), with what each
/// thread may still touch in place of what it will (P. Godefroid, "Partial-Order Methods for the Verification of
/// Concurrent Systems", 1996). A step is local in a state when it commutes with all that the others, and its own
/// thread's buffer, can do from there on:
/// <list type="bullet">
/// <item>a read of a place that no other thread may write any more;</item>
/// <item>a write, update, lock or unlock of a place that no other thread may touch any more;</item>
/// <item>under store buffers each write, for it goes to the thread's own buffer, and a full fence when that is empty;
/// </item>
/// <item>a write that leaves a buffer for a place that no other thread may touch any more.</item>
/// </list>
/// Where the history counts, a step that begins an operation is none: made earlier it would overlap with more. One that
/// ends an operation may come earlier: then more must come after it, and what was wrong stays wrong. Conditions
/// and proof: docs/checker.md. Immutable, so that several steppers can share it.
/// </remarks>
internal sealed class LocalSteps
{
    private readonly ScenarioMachine _machine;
    private readonly Futures[] _futures;
    private readonly bool _hasBuffers;

    public LocalSteps(ScenarioMachine machine)
    {
        _machine = machine;
        _futures = [.. machine.Code.Threads.Select(thread => new Futures(thread, machine.Code))];
        _hasBuffers = machine.Code.Model is MemoryModel.Tso or MemoryModel.Pso;
    }

    /// <summary>For each thread which places others may still read and write, writes in their buffers included.
    /// </summary>
    public void Look(ReadOnlySpan<ulong> state, Span<ulong> read, Span<ulong> written)
    {
        int threads = _futures.Length;
        read[..threads].Clear();
        written[..threads].Clear();
        for (int thread = 0; thread < threads; thread++)
        {
            int point = _machine.PointOf(state, thread);
            ulong reads = _futures[thread].Reads[point];
            ulong writes = _futures[thread].Writes[point];
            if (_hasBuffers)
                writes |= _machine.Memory.WaitingPlaces(state, thread);
            for (int other = 0; other < threads; other++)
            {
                if (other == thread)
                    continue;
                read[other] |= reads;
                written[other] |= writes;
            }
        }
    }

    /// <summary>Whether a thread's next access may be local, for all that is known without its index.</summary>
    public bool CanBeLocal(
        ReadOnlySpan<ulong> state, int thread, int point, ulong readByOthers, ulong writtenByOthers)
    {
        if (_futures[thread].Next[point] is not { } access)
            return false;
        if (!IsAlwaysLocal(access))
        {
            ulong touched = access.Writes ? readByOthers | writtenByOthers : writtenByOthers;
            if ((_futures[thread].NextPlaces[point] & ~touched) == 0)
                return false;
        }

        return !_machine.Code.TracksHistory || _machine.IsInside(state, thread);
    }

    /// <summary>Whether an access is local.</summary>
    public bool IsLocal(in Request request, ulong readByOthers, ulong writtenByOthers)
    {
        if (IsAlwaysLocal(request.Access))
            return true;
        ulong touched = request.Access.Writes ? readByOthers | writtenByOthers : writtenByOthers;
        return (touched >> request.Place & 1) == 0;
    }

    private bool IsAlwaysLocal(Access access) =>
        _hasBuffers && access.Kind is AccessKind.Store or AccessKind.Fence;
}
