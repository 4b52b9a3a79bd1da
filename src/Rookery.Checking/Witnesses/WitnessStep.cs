using System.Collections.Immutable;

namespace Rookery.Checking.Witnesses;

/// <summary>One step of an execution.</summary>
/// <param name="Thread">Which thread moved, or for which memory did; from 0.</param>
/// <param name="Who">That thread's name.</param>
/// <param name="IsMemory">Whether memory moved by itself: a buffer gave a write away.</param>
/// <param name="Line">The line of the shared access; 0 when memory moved by itself.</param>
/// <param name="Deeds">What happened, in order; <see cref="Words.CheckerWords"/> says it.</param>
/// <param name="After">What everything holds after it.</param>
public sealed record WitnessStep(
    int Thread, string Who, bool IsMemory, int Line, ImmutableArray<Deed> Deeds, Picture After);
