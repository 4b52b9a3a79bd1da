using System.Collections.Immutable;
using System.Globalization;

namespace Rookery.Traces.Measuring;

/// <summary>What a set of measured times allows.</summary>
/// <param name="WorkMax">The largest work that the work law allows.</param>
/// <param name="WorkMaxFrom">The number of workers whose time gives that.</param>
/// <param name="SpanMax">The largest span that the span law and the work allow.</param>
/// <param name="SpanMaxFrom">The number of workers whose time gives that.</param>
/// <param name="Broken">The times that break the greedy bound for every work and span that the laws allow.</param>
public sealed record TimingVerdict(
    Int128 WorkMax, int WorkMaxFrom, Int128 SpanMax, int SpanMaxFrom, ImmutableArray<(int Workers, long Time)> Broken)
{
    /// <summary>Whether some program can have all these times.</summary>
    public bool IsConsistent => Broken.IsEmpty;

    /// <summary>The reason in one sentence.</summary>
    public string Reason()
    {
        string laws = string.Create(
            CultureInfo.InvariantCulture,
            $"the work law at {WorkMaxFrom} workers allows a work of at most {WorkMax}, "
            + $"the span law at {SpanMaxFrom} workers a span of at most {SpanMax}");
        if (IsConsistent)
            return $"Some program can have these times: {laws}.";
        (int workers, long time) = Broken[0];
        Int128 bound = WorkMax + ((workers - 1) * SpanMax);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"No program can have these times under a greedy scheduler: {laws}, so "
            + $"{workers} workers take at most ({WorkMax} + {workers - 1} * {SpanMax}) / {workers} = "
            + $"{(double)bound / workers:0.##}, not {time}.");
    }
}
