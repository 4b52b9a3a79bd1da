using Rookery.Traces;
using Rookery.Traces.Measuring;

namespace Rookery.Simulation.Engine;

/// <summary>Keeps no event, only what the measures need of the live tasks.</summary>
internal readonly struct MeasuringSink(MeasureAccumulator measures) : IRunSink
{
    public void Event(in TraceEvent item) => measures.Add(item);

    public void Task(int task, int definition, ReadOnlySpan<long> arguments)
    {
    }
}
