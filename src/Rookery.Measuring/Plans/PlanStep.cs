using System.Runtime.InteropServices;
using Rookery.Programs;

namespace Rookery.Measuring.Plans;

/// <summary>One action of a task in a plan.</summary>
/// <param name="Kind">What is done.</param>
/// <param name="Line">Line of the program.</param>
/// <param name="Value">Units of work or waiting; or the number of the child.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct PlanStep(ActionKind Kind, int Line, long Value);
