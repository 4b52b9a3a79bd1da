namespace Rookery.Checking.Witnesses;

/// <summary>One step of an execution.</summary>
/// <param name="Thread">Which thread moved, or for which memory did; from 0.</param>
/// <param name="IsMemory">Whether memory moved by itself: a buffer gave a write away.</param>
/// <param name="Line">The line of the shared access; 0 when memory moved by itself.</param>
/// <param name="Sentence">What happened.</param>
/// <param name="Short">The same in a few signs, such as <c>top → 1</c>, for a figure.</param>
/// <param name="After">What everything holds after it.</param>
public sealed record WitnessStep(
    int Thread, bool IsMemory, int Line, string Sentence, string Short, Picture After);
