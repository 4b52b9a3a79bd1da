using Rookery.Checking.Naming;

namespace Rookery.Checking.Compiling;

/// <summary>For each point of a thread what its next step may touch, and what all steps until its end may.</summary>
/// <remarks>
/// The usual backward data flow over the thread's code, its later operations included. A set of places is one bit
/// each, for there are at most 64; an element whose index is no constant stands for its whole array.
/// </remarks>
internal sealed class Futures
{
    /// <param name="thread">The code.</param>
    /// <param name="scenario">Its memory.</param>
    public Futures(ThreadCode thread, ScenarioCode scenario)
    {
        int count = thread.Points.Length;
        (Reads, Writes) = (new ulong[count], new ulong[count]);
        (Next, NextPlaces) = (new Access?[count], new ulong[count]);
        var (reads, writes) = Flowing(thread, scenario);
        for (int point = 0; point < count; point++)
        {
            int at = thread.Points[point].Start;
            (Reads[point], Writes[point]) = (reads[at], writes[at]);
            if (point == thread.End)
                continue;

            // A line makes its access before anything that could pass it over.
            while (thread.Code[at].Op != Opcode.Access)
                at++;
            Next[point] = thread.Accesses[thread.Code[at].A];
            NextPlaces[point] = PlacesOf(thread, scenario, Next[point]!);
        }
    }

    /// <summary>Places that it may still read, by point.</summary>
    public ulong[] Reads { get; }

    /// <summary>Places that it may still write, lock or unlock, by point.</summary>
    public ulong[] Writes { get; }

    /// <summary>The access that it waits at, by point; null at the end.</summary>
    public Access?[] Next { get; }

    /// <summary>Places that this access may touch, by point; none for a fence.</summary>
    public ulong[] NextPlaces { get; }

    private static (ulong[] Reads, ulong[] Writes) Flowing(ThreadCode thread, ScenarioCode scenario)
    {
        var code = thread.Code;
        ulong[] reads = new ulong[code.Length], writes = new ulong[code.Length];
        Span<int> next = stackalloc int[2];
        bool isChanged = true;
        while (isChanged)
        {
            isChanged = false;
            for (int at = code.Length - 1; at >= 0; at--)
            {
                ulong read = 0, written = 0;
                if (code[at].Op == Opcode.Access)
                {
                    var access = thread.Accesses[code[at].A];
                    ulong places = PlacesOf(thread, scenario, access);
                    read = access.Reads || access.Kind == AccessKind.Lock ? places : 0;
                    written = access.Writes ? places : 0;
                }

                int count = Flow.Successors(code, at, next);
                for (int one = 0; one < count; one++)
                {
                    read |= reads[next[one]];
                    written |= writes[next[one]];
                }

                isChanged |= read != reads[at] || written != writes[at];
                (reads[at], writes[at]) = (read, written);
            }
        }

        return (reads, writes);
    }

    private static ulong PlacesOf(ThreadCode thread, ScenarioCode scenario, Access access)
    {
        if (access.Memory < 0)
            return 0;
        SharedMemory memory = scenario.Memory[access.Memory];
        bool isKnown = access.Index is >= Registers.Constants and < Registers.Scratch;
        long index = access.Index < 0 ? 0 : isKnown ? thread.Registers[access.Index] : -1;
        if (index >= 0 && index < memory.Length)
            return 1ul << (memory.FirstPlace + (int)index);
        return (ulong.MaxValue >> (AlgorithmLimits.PlacesMax - memory.Length)) << memory.FirstPlace;
    }
}
