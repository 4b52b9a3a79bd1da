using Rookery.Notation;
using Rookery.Programs.Analyses;

namespace Rookery.Programs;

/// <summary>Computes the work, the span and the numbers of tasks of a program without a schedule, exactly.</summary>
/// <remarks>
/// <para>
/// A task's strands are in series, except that a forked child runs in parallel with everything up to the task's next
/// join. So with <c>s</c> the length of the path so far, <c>work u</c> adds u to s, <c>call</c> adds the child's span,
/// <c>fork</c> remembers s + the child's span, and <c>join</c> raises s to the largest that is remembered.
/// </para>
/// <para>
/// Tasks with equal arguments cost the same, and so do tasks whose arguments differ by a shift that their cost does not
/// depend on, such as <c>count(0, 64)</c> and <c>count(64, 128)</c> when only <c>hi - lo</c> matters (see
/// docs/notation.md). Each such class is computed once. So a balanced program of 2^40 tasks needs some dozens of tasks.
/// </para>
/// <para>Example: the textbook Fibonacci program with n = 4 has work 17, span 8, parallelism 17/8.</para>
/// </remarks>
public static class ProgramAnalysis
{
    /// <summary>Analyses a program from its start line on.</summary>
    /// <exception cref="InputException">
    /// The program does something that has no meaning, a total does not fit in 64 bits, or a limit is reached.
    /// </exception>
    public static Analysis Analyse(BoundProgram program, AnalysisLimits limits) =>
        new CostAnalysis(program, limits, TranslationFinder.Find(program.Builders)).Run();

    /// <summary>Analyses a program within the default limits.</summary>
    /// <exception cref="InputException">See the other overload.</exception>
    public static Analysis Analyse(BoundProgram program) => Analyse(program, AnalysisLimits.Default);
}
