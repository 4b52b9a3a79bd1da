using Rookery.Checking.Naming;
using Rookery.Checking.Syntax;

namespace Rookery.Checking.Compiling;

/// <summary>A shared access of the code.</summary>
/// <param name="Kind">What it does.</param>
/// <param name="Order">How it orders; never unmarked.</param>
/// <param name="Memory">Index of the shared name in the scenario; -1 for a fence.</param>
/// <param name="Index">Register of the element's index; -1 for a single place.</param>
/// <param name="First">Register: what is written, the expected old value, or what is added; -1 for none.</param>
/// <param name="Second">Register of the new value of a compare-and-swap; -1 for none.</param>
/// <param name="Result">Register that takes the answer; -1 for none.</param>
/// <param name="Line">Its line.</param>
/// <param name="IsSilent">
/// Whether it makes no step of its own: nobody can tell when it happens, so that it goes with the step before.
/// </param>
internal sealed record Access(
    AccessKind Kind, AccessOrder Order, int Memory, int Index, int First, int Second, int Result, int Line,
    bool IsSilent)
{
    /// <summary>Whether it reads.</summary>
    public bool Reads => Kind is AccessKind.Load or AccessKind.CompareAndSwap or AccessKind.Add or AccessKind.Swap;

    /// <summary>Whether it may write.</summary>
    public bool Writes => Kind is not (AccessKind.Load or AccessKind.Fence);

    /// <summary>Whether it reads and writes in one step.</summary>
    public bool Updates => Reads && Writes;

    /// <summary>Whether what it reads brings along what was written before the release that it reads from.</summary>
    public bool Acquires => Order is AccessOrder.Acquire or AccessOrder.Full;

    /// <summary>Whether what it writes brings along what was written before.</summary>
    public bool Releases => Order is AccessOrder.Release or AccessOrder.Full;
}
