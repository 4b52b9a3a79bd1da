using System.Collections.Immutable;

namespace Rookery.Drawing;

/// <summary>What a speed-up figure is drawn from.</summary>
/// <remarks>Equality compares arrays by reference.</remarks>
public sealed record SpeedUpData
{
    /// <summary>The most series that can be told apart.</summary>
    public const int SeriesMax = 6;

    /// <summary>What was run, such as <c>count.fj</c>.</summary>
    public required string Program { get; init; }

    /// <summary>Work T1: the time of one worker without any scheduling. Speed-up is this over the makespan.</summary>
    public required long WorkTicks { get; init; }

    /// <summary>Span Tinf, from 0 to <see cref="WorkTicks"/> or beyond when tasks block; 0 for unknown.</summary>
    public required long SpanTicks { get; init; }

    /// <summary>One to <see cref="SeriesMax"/> series.</summary>
    public required ImmutableArray<SpeedUpSeries> Series { get; init; }
}
