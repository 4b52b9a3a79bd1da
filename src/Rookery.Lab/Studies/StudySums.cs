using System.Collections.Immutable;

namespace Rookery.Lab.Studies;

/// <summary>What the runs of a study came to at one moment: what table and figure show.</summary>
/// <param name="Plan">The study.</param>
/// <param name="Runs">Runs that were done.</param>
/// <param name="Groups">Those of each treatment, in the order of the sweep.</param>
/// <param name="WorkTicks">For a curve: the work of its runs.</param>
/// <param name="SpanTicks">For a curve: their span.</param>
/// <param name="LeftOut">Runs that a curve leaves out.</param>
internal sealed record StudySums(
    StudyPlan Plan, int Runs, ImmutableArray<StudyGroup> Groups, long WorkTicks, long SpanTicks, int LeftOut);
