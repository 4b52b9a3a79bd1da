using System.Collections.Immutable;
using Rookery.Lessons.Yaml;

namespace Rookery.Lessons.Exhibits;

/// <summary>What an exhibit of a recorded run says.</summary>
/// <param name="Trace">The recording's file.</param>
/// <param name="Computer">On what it was recorded, in the lesson's words.</param>
/// <param name="Show">What is shown.</param>
/// <param name="Stops">The moments, by name; empty for the most telling one.</param>
/// <param name="Steps">The steps that the player carries; null for a choice of the exhibit's own.</param>
/// <param name="HasPlayer">Whether the page has a player.</param>
internal sealed record RecordedSpec(
    YamlScalar Trace, string Computer, ImmutableArray<ExhibitView> Show, ImmutableArray<YamlScalar> Stops,
    (int First, int Last)? Steps, bool HasPlayer);
