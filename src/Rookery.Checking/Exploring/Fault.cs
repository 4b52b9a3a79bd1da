using Rookery.Checking.Compiling;

namespace Rookery.Checking.Exploring;

/// <summary>What went wrong inside a step.</summary>
/// <param name="Kind">What.</param>
/// <param name="Line">In which line.</param>
internal readonly record struct Fault(FaultKind Kind, int Line)
{
    public bool IsNone => Kind == FaultKind.None;
}
