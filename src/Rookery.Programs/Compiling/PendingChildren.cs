using System.Collections.Immutable;
using Rookery.Programs.Syntax;

namespace Rookery.Programs.Compiling;

/// <summary>Finds whether a task may have forked children that it has not joined.</summary>
internal static class PendingChildren
{
    /// <summary>Whether there may be some after these statements.</summary>
    /// <param name="statements">The statements.</param>
    /// <param name="before">Whether there may be some before them.</param>
    public static bool AfterAll(ImmutableArray<Statement> statements, bool before)
    {
        foreach (var statement in statements)
            before = After(statement, before);
        return before;
    }

    private static bool After(Statement statement, bool before) => statement switch
    {
        JoinStatement => false,
        InvokeStatement { IsFork: true } or LoopStatement { IsParallel: true } => true,
        LoopStatement loop => before | AfterAll(loop.Body, before),
        IfStatement choice =>
            AfterAll(choice.Otherwise, before) | choice.Branches.Any(branch => AfterAll(branch.Body, before)),
        _ => before,
    };
}
