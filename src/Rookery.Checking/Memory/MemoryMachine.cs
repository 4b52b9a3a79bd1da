using System.Collections.Immutable;
using Rookery.Checking.Compiling;
using Rookery.Checking.States;

namespace Rookery.Checking.Memory;

/// <summary>What shared memory does under one memory model; the search knows none of them.</summary>
/// <remarks>
/// A machine keeps its part of a state in slots. An access may be made in several ways (which write is read, where a
/// write goes in the order of writes); between accesses the machine may move on by itself (a buffer gives a write to
/// memory).
/// </remarks>
internal abstract class MemoryMachine
{
    /// <summary>Where slots lie; set before any of the methods below is called.</summary>
    public Slot[] Slots { protected get; set; } = [];

    /// <summary>In how many ways a thread can make an access now; 0 when it has to wait.</summary>
    public abstract int Ways(ReadOnlySpan<ulong> state, int thread, in Request request);

    /// <summary>Makes an access.</summary>
    /// <param name="state">The state, changed in place.</param>
    /// <param name="thread">Who makes it.</param>
    /// <param name="request">The access.</param>
    /// <param name="way">In which way, from 0.</param>
    /// <returns>What it answers; 0 for an access that answers nothing.</returns>
    public abstract long Perform(Span<ulong> state, int thread, in Request request, int way);

    /// <summary>In how many ways the machine can move on by itself on behalf of a thread.</summary>
    public virtual int Drifts(ReadOnlySpan<ulong> state, int thread) => 0;

    /// <summary>The places that writes in a thread's buffer go to, one bit each.</summary>
    public virtual ulong WaitingPlaces(ReadOnlySpan<ulong> state, int thread) => 0;

    /// <summary>Moves on by itself.</summary>
    /// <returns>The place that is written.</returns>
    public virtual int Drift(Span<ulong> state, int thread, int way) =>
        throw new InvalidOperationException("This memory never moves by itself.");

    /// <summary>What a place holds in the end, when all threads have ended and nothing waits any more.</summary>
    public abstract long Final(ReadOnlySpan<ulong> state, int place);

    /// <summary>What can still be read from a place, oldest first.</summary>
    public virtual ImmutableArray<long> Writes(ReadOnlySpan<ulong> state, int place) => [Final(state, place)];

    /// <summary>Writes that wait in a thread's buffer, oldest first; place -1 for a fence between them.</summary>
    public virtual ImmutableArray<(int Place, long Value)> Waiting(ReadOnlySpan<ulong> state, int thread) => [];

    /// <summary>
    /// For each place how many of its writes a thread has left behind; empty where there are no views.
    /// </summary>
    public virtual ImmutableArray<int> Seen(ReadOnlySpan<ulong> state, int thread) => [];

    /// <summary>After a step: makes one state of all that nobody can tell apart.</summary>
    /// <param name="state">The state, changed in place.</param>
    /// <param name="ended">Which threads have ended, one bit each.</param>
    public virtual void Settle(Span<ulong> state, uint ended)
    {
    }

    /// <summary>The machine of a model.</summary>
    /// <param name="code">The scenario.</param>
    /// <param name="shape">Takes its slots.</param>
    /// <param name="capacities">How long its lists may become.</param>
    /// <param name="bufferMax">Most writes that wait in a buffer; 0 for no bound.</param>
    public static MemoryMachine Create(ScenarioCode code, StateShape shape, Capacities capacities, int bufferMax) =>
        code.Model switch
        {
            MemoryModel.Sc => new SequentialMemory(code, shape),
            MemoryModel.Tso => new BufferedMemory(code, shape, capacities, bufferMax, isByPlace: false),
            MemoryModel.Pso => new BufferedMemory(code, shape, capacities, bufferMax, isByPlace: true),
            MemoryModel.Ra => new ViewMemory(code, shape, capacities),
        };
}
