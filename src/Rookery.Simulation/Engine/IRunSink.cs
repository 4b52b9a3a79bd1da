using Rookery.Traces;

namespace Rookery.Simulation.Engine;

/// <summary>
/// Where a run's events go. Implemented by structs, so that the engine is compiled for each without dispatch.
/// </summary>
internal interface IRunSink
{
    /// <summary>An event, in the order of the trace.</summary>
    void Event(in TraceEvent item);

    /// <summary>A new task, before its first event.</summary>
    void Task(int task, int definition, ReadOnlySpan<long> arguments);
}
