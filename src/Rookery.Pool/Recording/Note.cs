using System.Runtime.InteropServices;

namespace Rookery.Pool.Recording;

/// <summary>One note of a worker; 32 bytes.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct Note(long Time, NoteKind Kind, int Task, int Other, int Line, int Ticket = 0);
