using System.Runtime.InteropServices;

namespace Rookery.Traces.Replaying;

/// <summary>What one task was in the run: where it came from, where and when it ran, and how much it
/// computed.</summary>
/// <remarks>Steps, tasks and workers are numbered from 0, -1 stands for none. 56 bytes, since runs have many.</remarks>
/// <param name="Parent">The task that forked or called it; -1 for the root, or when the trace does not say.</param>
/// <param name="IsCalled">Whether it was called rather than forked.</param>
/// <param name="Depth">Forks and calls from the root to it: 0 for the root.</param>
/// <param name="Line">Line of its fork or call; of its beginning for the root; 0 when unknown.</param>
/// <param name="OriginStep">Step of its fork or call; -1 for the root.</param>
/// <param name="BeginStep">Step of its beginning; -1 if it never began.</param>
/// <param name="EndStep">Step of its end; -1 if it never ended.</param>
/// <param name="BeginWorker">The worker on which it began; -1 if it never did.</param>
/// <param name="EndWorker">The worker on which it ended, another one if it moved; -1 if it never did.</param>
/// <param name="Steals">How often it, or its continuation, was stolen.</param>
/// <param name="OwnWork">Length of its own work stretches, in units of time.</param>
/// <param name="TotalWork">Its own work and that of all its descendants.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct TaskRecord(
    int Parent,
    bool IsCalled,
    int Depth,
    int Line,
    int OriginStep,
    int BeginStep,
    int EndStep,
    int BeginWorker,
    int EndWorker,
    int Steals,
    long OwnWork,
    long TotalWork)
{
    /// <summary>A task of which nothing is known yet.</summary>
    internal static TaskRecord Unknown => new(-1, false, 0, 0, -1, -1, -1, -1, -1, 0, 0, 0);
}
