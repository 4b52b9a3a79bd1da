using System.Collections.Immutable;

namespace Rookery.Checking.Witnesses;

/// <summary>An execution that shows something.</summary>
/// <param name="Threads">Names of the threads.</param>
/// <param name="Start">What everything holds at first.</param>
/// <param name="Steps">The steps; none where the very beginning fails.</param>
/// <param name="Calls">The operations, thread by thread.</param>
/// <param name="Finding">What the execution shows; null as long as it shows nothing.</param>
public sealed record Witness(
    ImmutableArray<string> Threads,
    Picture Start,
    ImmutableArray<WitnessStep> Steps,
    ImmutableArray<WitnessCall> Calls,
    Finding? Finding);
