using System.Collections.Immutable;
using Rookery.Lessons;
using Rookery.Reports;

namespace Rookery.Courses;

/// <summary>Says what keeps lessons from being published, and what that means for the exit code.</summary>
internal static class CourseProblems
{
    private const int ShownMax = 20;

    /// <summary>Says it on standard error.</summary>
    public static void Write(App app, ImmutableArray<Problem> problems)
    {
        foreach (Problem problem in problems.Take(ShownMax))
            app.Console.Error.Write(problem.ToString());
        if (problems.Length > ShownMax)
            app.Console.Error.WriteLine($"and {Say.Whole(problems.Length - ShownMax)} more; mend these first.");
    }

    /// <summary>Wrong input before reached limits before missed expectations.</summary>
    public static ExitCode CodeOf(ImmutableArray<Problem> problems)
    {
        if (problems.Length == 0)
            return ExitCode.Done;
        if (problems.All(problem => problem.IsMiss))
            return ExitCode.No;
        return problems.All(problem => problem.IsMiss || problem.Diagnostic.IsLimit) ? ExitCode.Limit : ExitCode.Wrong;
    }
}
