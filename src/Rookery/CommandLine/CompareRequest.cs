using System.Collections.Immutable;
using Rookery.Experiments.Claims;
using Rookery.Traces.Measuring;

namespace Rookery.CommandLine;

/// <summary>What a comparison was asked for, checked as far as the words alone allow.</summary>
/// <param name="Vary">What varies, as written.</param>
/// <param name="Measure">What is compared.</param>
/// <param name="Seeds">Seeds for each combination; null for the usual number.</param>
/// <param name="Confidence">Of intervals.</param>
/// <param name="Rule">How a claim about two combinations is decided; null when none is made.</param>
/// <param name="Threads">Runs at once.</param>
/// <param name="Data">File of every run; null for none.</param>
/// <param name="Figure">File of the figure; null for none.</param>
internal sealed record CompareRequest(
    ImmutableArray<string> Vary, NamedMeasure Measure, int? Seeds, double Confidence, DecisionRule? Rule, int Threads,
    string? Data, string? Figure);
