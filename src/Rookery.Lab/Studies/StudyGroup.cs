using System.Collections.Immutable;
using Rookery.Drawing;
using Rookery.Experiments;

namespace Rookery.Lab.Studies;

/// <summary>The runs of one treatment.</summary>
/// <param name="Summary">What the measure came to.</param>
/// <param name="Targets">Where the point of each value leads; empty for a curve.</param>
/// <param name="Curve">The runs that a curve is drawn from; empty for other studies.</param>
internal sealed record StudyGroup(
    TreatmentSummary Summary, ImmutableArray<string> Targets, ImmutableArray<SpeedUpRun> Curve);
