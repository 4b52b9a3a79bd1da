namespace Rookery.Programs;

/// <summary>How much an analysis may do.</summary>
/// <param name="Steps">Instructions executed, after which it gives up with an error (<c>--limit-analysis</c>).</param>
/// <param name="Entries">
/// Results of tasks that are remembered; further ones are computed again each time, so this bounds memory and is no
/// error.
/// </param>
public sealed record AnalysisLimits(long Steps = 200_000_000, int Entries = 4_000_000)
{
    /// <summary>The limits when nothing else is said.</summary>
    public static AnalysisLimits Default { get; } = new();
}
