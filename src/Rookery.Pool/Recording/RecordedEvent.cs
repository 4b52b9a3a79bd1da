using System.Runtime.InteropServices;

namespace Rookery.Pool.Recording;

/// <summary>One event of a recorded run, as docs/trace.md describes it.</summary>
/// <param name="Time">Nanoseconds since the run's first task began.</param>
/// <param name="Worker">On which worker, from 0.</param>
/// <param name="Kind">What happened.</param>
/// <param name="Task">The task that acts or is moved, from 0; -1 for none.</param>
/// <param name="Other">The victim, the waker, the parent or the child, as the kind says; -1 for none.</param>
/// <param name="Line">Line of the program, from 1; 0 where there is none.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct RecordedEvent(long Time, int Worker, RecordedKind Kind, int Task, int Other, int Line);
