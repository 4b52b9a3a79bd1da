using System.Collections.Immutable;
using Rookery.Lessons.Yaml;
using Rookery.Notation;
using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Lessons.Exhibits;

/// <summary>Finds the moments of a run that a lesson asks for.</summary>
internal static class ExhibitMoments
{
    /// <summary>They, as steps with their names; the most telling one where none is asked for.</summary>
    /// <param name="trace">The run.</param>
    /// <param name="stops">The moments, by name.</param>
    /// <param name="lesson">The lesson, for problems.</param>
    /// <param name="problems">Gets what is wrong.</param>
    public static ImmutableArray<(int Step, string Name)> Of(
        Trace trace, ImmutableArray<YamlScalar> stops, SourceText lesson, ImmutableArray<Problem>.Builder problems)
    {
        if (stops.IsEmpty)
            return [TellingMoment.Of(trace)];
        var moments = ImmutableArray.CreateBuilder<(int, string)>();
        foreach (YamlScalar stop in stops)
        {
            MomentSteps found = Moments.Find(trace, stop.Text);
            if (found.Error is { } error)
                problems.Add(new(lesson, error with { Span = stop.Span }));
            else
                moments.Add((found.First, stop.Text));
        }

        return moments.ToImmutable();
    }
}
