using System.Collections.Immutable;
using Rookery.Drawing;
using Rookery.Lessons.Exhibits;
using Rookery.Programs;
using Rookery.Simulation;
using Rookery.Terminal;

namespace Rookery.Figures;

/// <summary>Runs a program on 1, 2, 4, … workers for its speed-up curve, with progress on a terminal.</summary>
internal static class SpeedUpSweep
{
    /// <summary>Runs it with each number of workers.</summary>
    /// <param name="program">The program.</param>
    /// <param name="settings">Everything but the number of workers.</param>
    /// <param name="name">What the legend calls the scheduler.</param>
    /// <param name="progress">Told of each run.</param>
    public static SpeedUpData Of(BoundProgram program, RunSettings settings, string name, ProgressLine progress) =>
        SpeedUpCurve.Of(program, settings, name, events => progress.Report(events, "events"));

    /// <inheritdoc cref="SpeedUpCurve.CountsFor"/>
    public static ImmutableArray<int> CountsFor(int workers) => SpeedUpCurve.CountsFor(workers);
}
