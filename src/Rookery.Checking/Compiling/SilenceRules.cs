using Rookery.Checking.Naming;
using Rookery.Checking.Syntax;

namespace Rookery.Checking.Compiling;

/// <summary>Which accesses make no step of their own.</summary>
/// <remarks>
/// A fence that does nothing in a memory model, or changes only what its own thread sees, commutes with all that
/// others do. So does, where reductions are wanted, a load of memory that no other thread of the scenario ever writes:
/// in each of the four models a thread sees its own last write there, and nothing else can be seen.
/// </remarks>
internal static class SilenceRules
{
    public static bool IsSilentFence(MemoryModel model, AccessOrder order) => model switch
    {
        MemoryModel.Sc => true,
        MemoryModel.Tso or MemoryModel.Pso or MemoryModel.Ra => order != AccessOrder.Full,
    };

    public static bool IsSilentLoad(AccessKind kind, bool isWrittenByOthers, bool reduces) =>
        reduces && kind == AccessKind.Load && !isWrittenByOthers;
}
