using System.Runtime.InteropServices;

namespace Rookery.Measuring.Tasks;

/// <summary>What the runtime's task scheduler said, or our program about a join.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct TaskEvent(long Time, TaskEventKind Kind, int Id);
