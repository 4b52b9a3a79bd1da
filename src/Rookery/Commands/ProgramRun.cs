using Rookery.Programs;
using Rookery.Simulation;
using Rookery.Terminal;

namespace Rookery.Commands;

/// <summary>Makes a run, with progress on a terminal.</summary>
internal static class ProgramRun
{
    /// <summary>Runs a program.</summary>
    /// <param name="program">The program.</param>
    /// <param name="settings">On what.</param>
    /// <param name="isRecorded">Whether its events are kept.</param>
    /// <param name="eventsToNameMax">
    /// A run that starved and was not recorded is made once more to name its tasks, unless it is longer.
    /// </param>
    /// <param name="app">Where progress is shown.</param>
    public static RunResult Make(
        BoundProgram program, RunSettings settings, bool isRecorded, long eventsToNameMax, App app)
    {
        using ProgressLine progress = app.StartProgress();
        void Report(long events) => progress.Report(events, "events");
        if (isRecorded)
            return Simulator.Record(program, settings, Report);
        RunResult run = Simulator.Measure(program, settings, Report);
        return run.Starvation is not null && run.Measures.Events <= eventsToNameMax
            ? Simulator.Record(program, settings, Report)
            : run;
    }
}
