using Rookery.Traces;
using Rookery.Traces.Measuring;

namespace Rookery.Simulation;

/// <summary>What a run came to.</summary>
/// <param name="Inputs">What it was made from.</param>
/// <param name="Measures">Its measures, the same with and without a trace.</param>
/// <param name="Starvation">How it starved; null when it finished.</param>
/// <param name="Trace">All its events; null when it was not recorded.</param>
public sealed record RunResult(TraceInputs Inputs, Measures Measures, Starvation? Starvation, Trace? Trace);
