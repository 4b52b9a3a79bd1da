using System.Collections.Immutable;

namespace Rookery.Checking;

/// <summary>Why an operation is in its class of progress: facts, nothing in words.</summary>
/// <remarks>What its kind does not name is as by default. <see cref="Words.CheckerWords"/> says it.</remarks>
/// <param name="Kind">What was found.</param>
public sealed record ProgressReason(ProgressReasonKind Kind)
{
    /// <summary>The most steps of its own (<see cref="ProgressReasonKind.Bounded"/>).</summary>
    public int StepsMax { get; init; }

    /// <summary>The operation as it is called: <c>push(1)</c>.</summary>
    public string Call { get; init; } = "";

    /// <summary>The thread that runs it.</summary>
    public string Thread { get; init; } = "";

    /// <summary>Where it waits, goes round from, or is thrown back to.</summary>
    public int Line { get; init; }

    /// <summary>The other threads that have not ended, and the lines before which they stand
    /// (<see cref="ProgressReasonKind.Stuck"/>).</summary>
    public ImmutableArray<(string Thread, int Line)> Others { get; init; } = [];

    /// <summary>The threads that got on while it was thrown back; empty when it read what was overwritten
    /// (<see cref="ProgressReasonKind.ThrownBack"/>).</summary>
    public ImmutableArray<string> Movers { get; init; } = [];
}
