namespace Rookery.Checking;

/// <summary>A step that an <see cref="Execution"/> can make next.</summary>
/// <param name="Thread">Which thread moves, or for which memory does; from 0.</param>
/// <param name="IsMemory">Whether memory moves by itself: a buffer gives a write to memory.</param>
/// <param name="Line">The line that the thread executes; 0 when memory moves.</param>
/// <param name="Way">In which of several ways, from 0: which write is read, which buffered write arrives.</param>
public sealed record ExecutionChoice(int Thread, bool IsMemory, int Line, int Way);
