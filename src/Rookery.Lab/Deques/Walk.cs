using System.Collections.Immutable;
using Rookery.Checking;
using Rookery.Checking.Witnesses;

namespace Rookery.Lab.Deques;

/// <summary>A place in an execution: so many of its steps have been made.</summary>
/// <remarks>Immutable: going a step makes another.</remarks>
/// <param name="Text">The text of the algorithm that it is an execution of.</param>
/// <param name="Memory">The memory model.</param>
/// <param name="Witness">The execution.</param>
/// <param name="At">Steps made, from 0 to all of them.</param>
public sealed record Walk(string Text, MemoryModel Memory, Witness Witness, int At)
{
    /// <summary>Number of steps in the execution.</summary>
    public int Count => Witness.Steps.Length;

    /// <summary>What everything holds.</summary>
    public Picture Now => PictureAt(At);

    /// <summary>What everything held before the last step.</summary>
    public Picture Before => PictureAt(Math.Max(0, At - 1));

    /// <summary>The last step; null before the first.</summary>
    public WitnessStep? Last => At == 0 ? null : Witness.Steps[At - 1];

    /// <summary>The operations as far as they have come: what is still to happen is not in them.</summary>
    public ImmutableArray<WitnessCall> Calls =>
    [
        .. Witness.Calls.Select(call => call.First < 0 || call.First >= At
            ? call with { First = -1, Last = -1, Result = "" }
            : call.Last < 0 || call.Last >= At ? call with { Last = -1, Result = "" } : call),
    ];

    /// <summary>The execution up to here, as one that a figure can show.</summary>
    public Witness SoFar => Witness with { Steps = Witness.Steps[..At], Calls = Calls };

    /// <summary>At another place; beyond the ends, at the end.</summary>
    public Walk Go(int at) => this with { At = Math.Clamp(at, 0, Count) };

    /// <summary>The threads that are before a line, or have just executed it.</summary>
    public IEnumerable<int> ThreadsAt(int line) =>
        Enumerable.Range(0, Now.Threads.Length).Where(thread => Now.Threads[thread].Line == line);

    /// <summary>Whether a place holds something else than before the last step.</summary>
    public bool IsChanged(int place) =>
        At > 0 && !Now.Places[place].Writes.SequenceEqual(Before.Places[place].Writes);

    /// <summary>What a thread can still read from a place; the last is the newest.</summary>
    public ImmutableArray<long> ReadableBy(int thread, int place)
    {
        ImmutableArray<long> writes = Now.Places[place].Writes;
        ImmutableArray<int> seen = Now.Threads[thread].Seen;
        return seen.IsDefaultOrEmpty ? writes : writes[Math.Clamp(seen[place], 0, writes.Length - 1)..];
    }

    private Picture PictureAt(int at) => at == 0 ? Witness.Start : Witness.Steps[at - 1].After;
}
