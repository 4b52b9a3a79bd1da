using Rookery.Simulation;
using Rookery.Traces.Measuring;

namespace Rookery.Experiments.Claims;

/// <summary>A sentence that a lecturer says, with the experiment that supports or refutes it.</summary>
/// <param name="Says">The sentence.</param>
/// <param name="Subject">What is run.</param>
/// <param name="First">What it is compared with: a name and choices.</param>
/// <param name="Second">What the sentence is about: a name and choices.</param>
/// <param name="Measure">What is measured.</param>
/// <param name="Rule">How it is decided.</param>
/// <param name="FirstSeed">The first seed.</param>
/// <param name="SeedCount">Pairs, at least 2.</param>
public sealed record Claim(
    string Says, Subject Subject, (string Label, Setup Setup) First, (string Label, Setup Setup) Second,
    NamedMeasure Measure, DecisionRule Rule, long FirstSeed, int SeedCount)
{
    /// <summary>The sweep whose cells decide it: two treatments.</summary>
    public Sweep ToSweep() => Sweep.Of(Subject, [First, Second], FirstSeed, SeedCount);

    /// <summary>Decides it from the results of all cells.</summary>
    /// <param name="cells">Every cell of <see cref="ToSweep"/>, in any order.</param>
    public ClaimResult Decide(IEnumerable<CellResult> cells) =>
        new ClaimDecision(this, cells).Finish();
}
